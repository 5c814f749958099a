import { gzipSync } from 'node:zlib'
import { cookieOf, expect, test } from '../support/app'
import { makeBakery, type TestBakery } from '../support/bakery'
import { everyPage } from '../support/walks/all'

/** What a desk page may add to a page that has nothing of its own, compressed. */
const mostAboveBareKb = 90

test('no page loads more than 90 kB of script above a bare page of the same build, compressed', async ({ app }) => {
  const sizes = new Map<string, number>()
  const sizeOf = async (address: string, bakery: TestBakery) => {
    const { name, value } = await cookieOf(bakery.owner.sessionSecret, app.url)
    const html = await (await fetch(`${app.url}${address}`, { headers: { Cookie: `${name}=${value}` } })).text()
    let bytes = 0
    for (const [tag, source] of html.matchAll(/<script[^>]* src="([^"]+)"[^>]*>/g)) {
      // Only browsers without modules load that one.
      if (/nomodule/i.test(tag)) continue
      if (!sizes.has(source!)) sizes.set(source!, gzipSync(Buffer.from(await (await fetch(`${app.url}${source}`)).arrayBuffer())).length)
      bytes += sizes.get(source!)!
    }
    return bytes / 1000
  }
  const bareKb = await sizeOf('/nothing-is-here', await makeBakery('Bare', new Date()))
  expect(bareKb).toBeGreaterThan(50)
  for (const page of everyPage) {
    const bakery = await makeBakery('Mill Row', new Date())
    const aboveKb = (await sizeOf(await page.address({ bakery, neighbour: bakery, look: app.look }), bakery)) - bareKb
    console.log(`${page.route.padEnd(40)} ${aboveKb.toFixed(1).padStart(6)} kB above the bare ${bareKb.toFixed(1)} kB`)
    expect(aboveKb, page.route).toBeLessThanOrEqual(mostAboveBareKb)
  }
})
