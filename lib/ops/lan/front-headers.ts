import { frontHeader } from '../../auth/address-of'

/** Headers by their names in small letters; a name that came several times has them all. */
export type HeaderMap = Record<string, string | string[]>

/** What speaks of one connection and not of the request (RFC 9110, 7.6.1; RFC 9113, 8.2.2), and what ends with us. */
const ofConnection = new Set([
  'connection',
  'keep-alive',
  'proxy-connection',
  'proxy-authenticate',
  'proxy-authorization',
  'te',
  'trailer',
  'transfer-encoding',
  'upgrade',
  'http2-settings',
  'expect',
])

/** What a request says of where it came from: for the front to say, and for nobody before it. */
const ofOrigin =
  /^(forwarded|via|x-forwarded(-.*)?|x-real-ip|x-client-ip|x-original-.*|true-client-ip|x-middleware-.*)$/
/** Other programs read an underscore as a hyphen, so that a header would come past its rule. */
const headerName = /^[a-z\d!#$%&'*+.^`|~-]+$/

/**
 * The headers with which a request goes on to the app: what was said of its origin is taken out and said anew, and what
 * was only for the connection stays here.
 * @param raw names and values in turn, as they came
 * @param front the host that was asked for, who asked, and what the app knows the front by
 */
export function headersToApp(
  raw: readonly string[],
  front: { host: string; address: string; secret: string },
): HeaderMap {
  const kept = takeAway(raw, (name) => ofOrigin.test(name) || name === frontHeader || name === 'host')
  // HTTP/2 may send a cookie in pieces (RFC 9113, 8.2.3).
  const cookie = kept.get('cookie')
  if (cookie) kept.set('cookie', [cookie.join('; ')])
  return mapOf(kept, {
    host: front.host,
    'x-forwarded-for': front.address,
    'x-forwarded-host': front.host,
    'x-forwarded-proto': 'https',
    [frontHeader]: front.secret,
  })
}

/** The headers with which the app's answer goes on to the browser. */
export function headersToBrowser(raw: readonly string[]): HeaderMap {
  return mapOf(
    takeAway(raw, () => false),
    {},
  )
}

function takeAway(raw: readonly string[], isOurs: (name: string) => boolean): Map<string, string[]> {
  const pairs = raw.flatMap((name, at) => (at % 2 === 0 ? [[name.toLowerCase(), raw[at + 1] ?? ''] as const] : []))
  const named = new Set(
    pairs
      .filter(([name]) => name === 'connection')
      .flatMap(([, value]) => value.split(',').map((token) => token.trim().toLowerCase())),
  )
  const kept = new Map<string, string[]>()
  for (const [name, value] of pairs) {
    if (!headerName.test(name) || ofConnection.has(name) || named.has(name) || isOurs(name)) continue
    kept.set(name, [...(kept.get(name) ?? []), value])
  }
  return kept
}

function mapOf(kept: Map<string, string[]>, added: Record<string, string>): HeaderMap {
  const single = [...kept].map(([name, values]) => [name, values.length === 1 ? (values[0] ?? '') : values] as const)
  return Object.fromEntries([...single, ...Object.entries(added)])
}
