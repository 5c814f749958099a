import 'server-only'
import { z } from 'zod'
import { linkTo } from '../../auth/link-to'
import { query } from '../query'
import { frontFacts } from './front-facts'
import { qrCode } from './qr-code'
import { stationOrigin } from './station-origin'

/**
 * How a tablet comes in: by the https front of this install, by a proxy before it, or not at all. It is the same for
 * every bakery of the install, and holds nothing of any.
 */
export const getAddress = query({
  name: 'stations.get-address',
  input: z.strictObject({}),
  right: 'manage-stations',
  async run() {
    const front = frontFacts()
    if (front) {
      const { certificate } = front
      return {
        way: 'front' as const,
        ...opened(front.origin),
        certificate,
        trust: front.trustAddresses.map((address) => ({ address, code: qrCode(address) })),
      }
    }
    const origin = stationOrigin()
    return origin === null
      ? { way: 'none' as const, address: new URL(linkTo('/')).origin }
      : { way: 'proxy' as const, ...opened(origin) }
  },
})

/** What a tablet opens, in text and as a picture to scan. */
function opened(origin: string) {
  const address = `${origin}/station`
  return { address, code: qrCode(address) }
}
