import 'server-only'
import { z } from 'zod'
import { instant } from '../text.input'

const facts = z.strictObject({
  /** What a tablet opens. */
  origin: z.url(),
  /** Over plain http: how to trust the certificate. One for each address of the machine. */
  trustAddresses: z.array(z.url()).min(1),
  certificate: z.strictObject({
    name: z.string(),
    host: z.string(),
    networks: z.array(z.string()),
    fingerprint: z.string(),
    thumbprint: z.string(),
    endsAt: instant,
  }),
})

/** What the start says of the https front that it puts before the app. */
export type FrontFacts = z.output<typeof facts>

/** What the start said of its front; null where it put none there. */
export function frontFacts(env: Readonly<Record<string, string | undefined>> = process.env): FrontFacts | null {
  return env.EVENDOUGH_FRONT ? facts.parse(JSON.parse(env.EVENDOUGH_FRONT)) : null
}
