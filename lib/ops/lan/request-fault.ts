/** An answer that the front gives itself. */
export type OwnAnswer =
  | { status: 400 | 413 | 421 | 502 | 408 }
  /** Somebody came by one of our addresses: what a browser keeps is kept under the name. */
  | { status: 307; location: string }

/** A form with a file of readings has 3 MB at most (next.config.mjs), and the server says so itself. */
export const mostBodyBytes = 4 * 1024 * 1024

/** Under what the front is asked for. */
export type FrontPlace = {
  /** Name and port, as a browser writes them in `Host`. */
  host: string
  /** Addresses and port, written the same way. */
  otherHosts: readonly string[]
  origin: string
}

/** What is asked, of either version of HTTP. */
export type Asked = {
  method: string
  path: string
  /** Names and values in turn. */
  rawHeaders: readonly string[]
  /** `:authority` of HTTP/2. */
  authority?: string
}

/**
 * What is wrong with a request before anybody looks at what it wants, or null. What two programs could read in two ways
 * is refused, so that none is led past the other.
 */
export function requestFault(asked: Asked, place: FrontPlace): OwnAnswer | null {
  const hosts = valuesOf(asked.rawHeaders, 'host')
  const [host, ...further] = [...new Set([...(asked.authority === undefined ? [] : [asked.authority]), ...hosts])]
  if (host === undefined || further.length > 0 || hosts.length > 1) return { status: 400 }
  if (!/^\/[\x21-\x7e]*$/.test(asked.path)) return { status: 400 }
  const codings = valuesOf(asked.rawHeaders, 'transfer-encoding')
  const lengths = valuesOf(asked.rawHeaders, 'content-length')
  if (codings.length > 1 || (codings[0] !== undefined && codings[0].toLowerCase() !== 'chunked')) return { status: 400 }
  if (lengths.length > 1 || (lengths[0] !== undefined && (!/^\d{1,15}$/.test(lengths[0]) || codings.length > 0)))
    return { status: 400 }
  const wanted = host.toLowerCase()
  if (wanted !== place.host) {
    const mayGoOn = asked.method === 'GET' || asked.method === 'HEAD'
    return mayGoOn && place.otherHosts.includes(wanted)
      ? { status: 307, location: `${place.origin}${asked.path}` }
      : { status: 421 }
  }
  return Number(lengths[0] ?? 0) > mostBodyBytes ? { status: 413 } : null
}

function valuesOf(raw: readonly string[], name: string): string[] {
  return raw.flatMap((one, at) => (at % 2 === 0 && one.toLowerCase() === name ? [raw[at + 1] ?? ''] : []))
}
