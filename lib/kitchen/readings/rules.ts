/** A reading is of the shift in which it was taken for this long. Bakers work through midnight, so days do not count. */
const sameShiftMs = 12 * 60 * 60_000

/** How far a time in a file may be off: by hours, of a clock that nobody set, and not by days. */
const clockAheadMs = 24 * 60 * 60_000

/**
 * The level of a trial's factor within batches that a piece is of: the first piece is of the first level, the second of
 * the second, and round again. Null where the trial has no factor.
 * @param piece from 1
 */
export function levelOfPiece(piece: number, factorLevels: readonly string[]): string | null {
  return factorLevels[(piece - 1) % factorLevels.length] ?? null
}

/** Why a time of a file cannot be when a reading was taken: hours may be off, a day ahead is a slip of whoever wrote it, and so is a day before there was a trial. */
export function timeFault(takenAt: Date, now: Date, trialCreatedAt: Date): 'in-the-future' | 'before-the-trial' | null {
  if (takenAt.getTime() > now.getTime() + clockAheadMs) return 'in-the-future'
  if (takenAt.getTime() < trialCreatedAt.getTime() - clockAheadMs) return 'before-the-trial'
  return null
}

/**
 * Whether somebody may correct a reading: whoever has the right whole, any; a shift baker, their own in the shift in
 * which it was taken, which is over after 12 hours. A clock that runs ahead makes no shift longer: by then the reading
 * was received.
 */
export function mayCorrect(q: {
  level: 'yes' | 'no' | 'own-same-shift' | 'in-part'
  personId: string
  reading: { personId: string; takenAt: Date; receivedAt: Date }
  now: Date
}): boolean {
  switch (q.level) {
    case 'yes':
      return true
    case 'own-same-shift':
      return (
        q.reading.personId === q.personId &&
        Math.abs(q.now.getTime() - Math.min(q.reading.takenAt.getTime(), q.reading.receivedAt.getTime())) <= sameShiftMs
      )
    case 'in-part':
    case 'no':
      return false
    default:
      return q.level satisfies never
  }
}
