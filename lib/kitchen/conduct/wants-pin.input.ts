/** Who gave a PIN at a tablet this long ago is taken to be who stands there still. The project's own rule. */
const pinFreshMs = 5 * 60_000

/**
 * Whether a correction at a tablet waits for a PIN: a slip of one's own is put right at once, whatever else is corrected
 * has the name of somebody who was asked who they are just before.
 * A badge is a thing that lies about and is photographed, so whoever came in by one has given no PIN.
 * @param isSlip as `isOwnSlip` says
 */
export function wantsPin({
  isSlip,
  pinGivenAt,
  now,
}: {
  isSlip: boolean
  pinGivenAt: Date | null
  now: Date
}): boolean {
  if (isSlip) return false
  return pinGivenAt === null || now.getTime() - pinGivenAt.getTime() > pinFreshMs
}
