import { lotsDraft } from '../keep/keep-weighing'
import { noLots, readLots, type LotsChosen } from '../outbox/lots-of-line'
import { useDraft } from './use-draft'

/**
 * From which lots a line is weighed, chosen and kept beside what is typed of it.
 * @param draft under which its mass is kept
 * @param initial until somebody has chosen
 */
export function useLots(draft: string, initial: LotsChosen = noLots) {
  const { text, type } = useDraft(lotsDraft(draft))
  const chosen = readLots(text ?? '') ?? initial
  return { chosen, choose: (next: LotsChosen) => type(JSON.stringify(next)) }
}
