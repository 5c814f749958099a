/** One page of the path: its address pattern, and an address in the demo bakery that has most on it. */
export type FoundPage = { route: string; address: string }

const mostTriesOfRoute = 12

/**
 * Finds an address for every route by following the links, as a person would, from the routes whose address is known.
 * Of several addresses of one route it keeps the one with most on it.
 * @param routes address patterns of the build, such as `/trials/[trialId]`
 * @param open gives a page's HTML, or null when it does not open
 * @returns in the order of the routes; a route to which no link leads, or whose pages do not open, is not among them
 */
export async function findPages(
  routes: readonly string[],
  open: (address: string) => Promise<string | null>,
): Promise<FoundPage[]> {
  const longest = new Map<string, { address: string; length: number }>()
  const tries = new Map<string, number>()
  const seen = new Set<string>()
  const waiting = routes.filter((route) => !route.includes('['))
  for (let address = waiting.shift(); address !== undefined; address = waiting.shift()) {
    const route = routeOf(address, routes)
    if (!route || seen.has(address) || (tries.get(route) ?? 0) >= mostTriesOfRoute) continue
    seen.add(address)
    tries.set(route, (tries.get(route) ?? 0) + 1)
    const html = await open(address)
    if (html === null) continue
    if (html.length > (longest.get(route)?.length ?? -1)) longest.set(route, { address, length: html.length })
    waiting.push(...linksOf(html))
  }
  return routes.flatMap((route) => {
    const found = longest.get(route)
    return found ? [{ route, address: found.address }] : []
  })
}

/** The route of an address: the one with the fewest places to fill, as `/trials/new` is not a trial called 'new'. */
export function routeOf(address: string, routes: readonly string[]): string | undefined {
  const parts = address.replace(/[?#].*$/, '').split('/')
  const fits = (route: string) => {
    const wanted = route.split('/')
    return (
      wanted.length === parts.length &&
      wanted.every((part, i) => (part.startsWith('[') ? parts[i] !== '' : part === parts[i]))
    )
  }
  const places = (route: string) => route.split('[').length
  return routes.filter(fits).sort((a, b) => places(a) - places(b))[0]
}

function linksOf(html: string): string[] {
  return [...html.matchAll(/<a [^>]*href="(\/[^"]*)"/g)].flatMap(
    ([, href]) => href?.replaceAll('&amp;', '&').replace(/#.*$/, '') ?? [],
  )
}
