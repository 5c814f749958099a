import 'server-only'
import type { Refused } from '@/lib/kitchen/result'

/** Of a tablet that is not enrolled. */
export const notSignedIn: Refused = { code: 'not-signed-in', facts: {}, problems: [] }
