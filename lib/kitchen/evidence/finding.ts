import 'server-only'
import type { evidence } from '../../words/en/evidence'

/** Every check and outcome has words, or it does not compile. */
export type CheckName = keyof typeof evidence.checks
export type CheckOutcome = keyof typeof evidence.outcomes

export type Finding = { what: CheckName; outcome: CheckOutcome; facts: Readonly<Record<string, string | number>> }

/** What stands in the foot of a print: the number of the record's last entry then, and the first digits of its hash. */
export type PaperAnchor = { number: number; hash: string }

const sound = new Set<CheckOutcome>(['agrees', 'left-out', 'not-there'])

/** Whether a check found nothing against the file. */
export function isSound({ outcome }: Finding): boolean {
  return sound.has(outcome)
}
