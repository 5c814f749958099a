import { bareAddress, mostAboveBareKb, scriptSizer } from '../../lib/ops/bench/script-size'
import { cookieOf, expect, test } from '../support/app'
import { makeBakery, type TestBakery } from '../support/bakery'
import { everyPage } from '../support/walks/all'

test('no page loads more than 90 kB of script above a bare page of the same build, compressed', async ({ app }) => {
  const sizeOf = scriptSizer(async (source) => new Uint8Array(await (await fetch(`${app.url}${source}`)).arrayBuffer()))
  const open = async (address: string, bakery: TestBakery) => {
    const { name, value } = await cookieOf(bakery.owner.sessionSecret, app.url)
    return (await fetch(`${app.url}${address}`, { headers: { Cookie: `${name}=${value}` } })).text()
  }
  const bareKb = await sizeOf(await open(bareAddress, await makeBakery('Bare', new Date())))
  expect(bareKb).toBeGreaterThan(50)
  for (const page of everyPage) {
    const bakery = await makeBakery('Mill Row', new Date())
    const aboveKb =
      (await sizeOf(await open(await page.address({ bakery, neighbour: bakery, look: app.look }), bakery))) - bareKb
    console.log(`${page.route.padEnd(40)} ${aboveKb.toFixed(1).padStart(6)} kB above the bare ${bareKb.toFixed(1)} kB`)
    expect(aboveKb, page.route).toBeLessThanOrEqual(mostAboveBareKb)
  }
})
