import { log } from '../../db/log'
import type { Authority } from './authority'
import { certify, isDue, type ServerCertificate } from './server-certificate'

const lookEveryMs = 3_600_000

/**
 * Sees to it that the front never shows a certificate that is about to end, however long a start runs.
 * @returns what looks whether it is time, which also happens once an hour, and what ends that
 */
export function keepRenewed(
  first: ServerCertificate,
  {
    authority,
    addresses,
    show,
  }: { authority: Authority; addresses: readonly string[]; show(one: ServerCertificate): void },
): { look(now: Date): Promise<void>; stop(): void } {
  let shown = first
  const look = async (now: Date) => {
    if (!isDue(shown, authority, now)) return
    shown = await certify(authority, addresses, now)
    show(shown)
  }
  const timer = setInterval(() => {
    // A fault now is tried again in an hour, some two months before it matters.
    look(new Date()).catch((error: unknown) => log.error({ event: 'certificate-not-renewed', fault: String(error) }))
  }, lookEveryMs)
  timer.unref()
  return { look, stop: () => clearInterval(timer) }
}
