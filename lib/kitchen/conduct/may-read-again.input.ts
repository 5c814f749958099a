/** Two readings that disagree ask for this one, whatever the plan says. */
const thirdRepeat = 3

/**
 * Whether a place (dough, measure, piece, level) takes a further reading. The plan says how many there are, and the
 * only one beyond it is the third that two which disagree ask for: whoever may read until a figure pleases can move it.
 * @param needs what the place asks for as it stands; 'repeat' also where nothing is read yet, null where it is complete
 * @param repeat number of the reading that is to come, from 1
 * @param repeats how many the measure asks for, ≥ 1
 */
export function mayReadAgain(q: { needs: 'repeat' | 'third' | null; repeat: number; repeats: number }): boolean {
  switch (q.needs) {
    case null:
      return false
    case 'repeat':
      return q.repeat <= q.repeats
    case 'third':
      return q.repeat <= Math.max(q.repeats, thirdRepeat)
    default:
      return q.needs satisfies never
  }
}
