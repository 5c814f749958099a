import 'server-only'
import { linkTo } from '../../auth/link-to'
import { frontFacts } from './front-facts'

/** Where tablets find this install: its own https front, or a proxy before it; null where nothing of it comes over https. */
export function stationOrigin(): string | null {
  const front = frontFacts()
  if (front) return front.origin
  const { origin } = new URL(linkTo('/'))
  return origin.startsWith('https:') ? origin : null
}
