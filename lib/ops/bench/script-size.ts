import { gzipSync } from 'node:zlib'

/** What a desk page may add to a page that has nothing of its own, kB, compressed. */
export const mostAboveBareKb = 90

/** A page of the build that has nothing of its own. */
export const bareAddress = '/nothing-is-here'

/**
 * Size of the script that a page asks for when it is opened first, each file compressed with gzip by itself, as a
 * server sends it. The files of one build are fetched once.
 * @param fetchFile gives a file of script by its address
 * @returns a function from a page's HTML to kB (1000 bytes)
 */
export function scriptSizer(fetchFile: (source: string) => Promise<Uint8Array>): (html: string) => Promise<number> {
  const bytesOf = new Map<string, number>()
  const sizeOf = async (source: string) => {
    const size = bytesOf.get(source) ?? gzipSync(await fetchFile(source)).length
    bytesOf.set(source, size)
    return size
  }
  return async (html) => {
    let bytes = 0
    for (const source of scriptSources(html)) bytes += await sizeOf(source)
    return bytes / 1000
  }
}

/** Addresses of the script files of a page, each once. Only browsers without modules load the ones marked `nomodule`. */
export function scriptSources(html: string): string[] {
  const found = [...html.matchAll(/<script[^>]* src="([^"]+)"[^>]*>/g)]
  return [...new Set(found.flatMap(([tag, source]) => (source === undefined || /nomodule/i.test(tag) ? [] : [source])))]
}
