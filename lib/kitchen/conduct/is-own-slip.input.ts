/** Slips are put right at once; what is corrected later was looked at before. Ten minutes, by our own clock: the project's own rule. */
export const ownSlipMs = 10 * 60_000

type Entered = { person: { id: string }; receivedAt: Date }

/**
 * Whether a correction is somebody's own slip: put right by whoever made it, within ten minutes of the receipt of what was
 * wrong. It needs a reason as any other, and is counted and listed as any other.
 */
export function isOwnSlip(wrong: Entered, correction: Entered): boolean {
  return (
    wrong.person.id === correction.person.id &&
    correction.receivedAt.getTime() - wrong.receivedAt.getTime() <= ownSlipMs
  )
}
