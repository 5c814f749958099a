/** Who gave a PIN at a tablet this long ago is taken to be who stands there still. The project's own rule. */
const pinFreshMs = 5 * 60_000

/**
 * Whether a correction at a tablet waits for a PIN: a slip of one's own is put right at once, whatever else is corrected
 * has the name of somebody who was asked who they are just before.
 * @param isSlip as `isOwnSlip` says
 */
export function wantsPin(q: { isSlip: boolean; pinGivenAt: Date; now: Date }): boolean {
  return !q.isSlip && q.now.getTime() - q.pinGivenAt.getTime() > pinFreshMs
}
