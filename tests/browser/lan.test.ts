import fs from 'node:fs'
import net from 'node:net'
import os from 'node:os'
import path from 'node:path'
import pg from 'pg'
import { expect, test } from 'playwright/test'
import { runningPort } from '../../lib/db/embedded/server'
import { findFreePort } from '../../lib/ops/find-free-port'
import { embeddedAppUrl } from '../../lib/ops/open-database'
import { readOrMakeSecrets } from '../../lib/ops/secrets'
import { spawnStart } from '../../lib/ops/spawn-start'
import { openChromium } from '../support/trusting-chromium'

const name = 'kitchen.test'
const password = 'rye sours slowly in june'

test('a tablet that trusts the bakery signs in over https by its name, one that does not gets nothing, and no start takes that away in silence', async () => {
  test.setTimeout(120_000)
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evendough-lan-'))
  fs.chmodSync(folder, 0o755)
  const [port, lanPort, trustPort] = [await findFreePort(), await findFreePort(), await findFreePort()]
  const settings = {
    PORT: String(port),
    EVENDOUGH_DATA: path.join(folder, 'data'),
    EVENDOUGH_LAN_NAME: name,
    EVENDOUGH_LAN_ADDRESSES: '127.0.0.1',
    EVENDOUGH_LAN_PORT: String(lanPort),
    EVENDOUGH_LAN_TRUST_PORT: String(trustPort),
  }
  const origin = `https://${name}:${lanPort}`
  const refused = async (env: Record<string, string>, args: string[], line: RegExp) => {
    const one = spawnStart({ ...settings, ...env }, args)
    expect(await one.ended).toBe(1)
    expect(one.output().trim()).toMatch(line)
  }

  // What would show the invented bakery to a network is not done, and leaves the folder free for a real one.
  await refused({}, ['--lan'], /holds the invented bakery, or would: .* not put on the network unless .*--lan-demo/)

  const running = spawnStart(settings, ['--lan', '--empty'])
  const [link] = await running.until(new RegExp(`${origin}/set-up/[\\w-]{22}`))
  await running.until(/Ctrl-C stops it/)
  const told = running.output()
  expect(told).toContain(`Tablets come in at ${origin}`)
  expect(told).toContain(`http://127.0.0.1:${trustPort}`)
  const fingerprint = /SHA-256\): ([\dA-F:]{95})/.exec(told)?.[1] ?? ''

  // What a tablet is given without https is the certificate that the desk and the terminal name.
  const door = await fetch(`http://127.0.0.1:${trustPort}`)
  expect(await door.text()).toContain(fingerprint)
  const kept = JSON.parse(fs.readFileSync(path.join(folder, 'data', 'lan-authority.json'), 'utf8')) as {
    certificate: string
  }

  const stranger = await openChromium(path.join(folder, 'stranger'), name)
  const strangersPage = await stranger.browser.newPage()
  await expect(strangersPage.goto(`${origin}/sign-in`)).rejects.toThrow(/ERR_CERT_AUTHORITY_INVALID/)
  await stranger.browser.close()

  const { browser } = await openChromium(path.join(folder, 'tablet'), name, kept.certificate)
  const context = await browser.newContext({ locale: 'en-GB' })
  const page = await context.newPage()
  const noise: string[] = []
  page.on('console', (message) => {
    if (message.type() === 'error') noise.push(message.text())
  })
  await page.goto(link)
  await page.getByLabel('Your name').fill('Ada')
  await page.getByLabel('Your e-mail address').fill('ada@mill-row.example')
  await page.getByLabel('Choose a password').fill(password)
  await page.getByLabel('Name of the bakery').fill('Mill Row')
  await page.getByRole('button', { name: 'Set up the bakery' }).click()
  await page.getByRole('button', { name: 'Sign out' }).click()
  await page.waitForURL(/sign-in/)
  await page.getByLabel('E-mail address').fill('ada@mill-row.example')
  await page.getByLabel('Password').fill(password)
  await page.getByRole('button', { name: 'Sign in' }).click()
  await page.getByRole('link', { name: 'Team' }).click()
  await page.getByRole('link', { name: 'Stations' }).click()

  await expect(page.getByRole('heading', { level: 1 })).toContainText('Tablets come in over https')
  await expect(page.getByText(`${origin}/station`, { exact: true })).toBeVisible()
  await expect(page.getByText(fingerprint)).toBeVisible()
  await expect(page.getByRole('img', { name: 'Picture to scan for the address' })).toBeVisible()
  expect(new URL(page.url()).origin).toBe(origin)
  expect(
    await page.evaluate(() => [window.isSecureContext, 'serviceWorker' in navigator, Boolean(crypto.subtle)]),
  ).toEqual([true, true, true])
  expect(
    await page.evaluate(
      () => (performance.getEntriesByType('navigation')[0] as PerformanceNavigationTiming).nextHopProtocol,
    ),
  ).toBe('h2')
  const cookie = (await context.cookies()).find((one) => one.name === '__Host-evendough.session')
  expect(cookie).toMatchObject({ secure: true, httpOnly: true, path: '/', domain: name })
  // The tablet's own page is kept by its worker, under the same name.
  const tablet = await context.newPage()
  await tablet.goto(`${origin}/station`)
  await expect(tablet.getByLabel('Code')).toBeVisible()
  expect(await tablet.evaluate(async () => (await navigator.serviceWorker.ready).scope)).toBe(`${origin}/station`)
  await tablet.close()
  // The record has the tablet's own address, as the front saw it, by either way into the app.
  expect(await recordedAddresses(settings.EVENDOUGH_DATA)).toEqual([
    'people.set-up-bakery 127.0.0.1',
    'people.sign-out 127.0.0.1',
    'people.sign-in 127.0.0.1',
  ])
  expect(noise).toEqual([])
  await browser.close()

  running.child.kill('SIGTERM')
  expect(await running.ended).toBe(0)
  for (const each of [port, lanPort, trustPort]) await expect(isFree(each)).resolves.toBe(true)

  // Under another name it says what tablets would lose before anything is done.
  await refused(
    { EVENDOUGH_LAN_NAME: 'oven.test' },
    ['--lan', '--empty'],
    /^Tablets know this bakery as kitchen\.test; /,
  )
  fs.rmSync(folder, { recursive: true, force: true })
})

/** What each entry of the record says was done, and from where. */
async function recordedAddresses(dataFolder: string): Promise<string[]> {
  const client = new pg.Client(embeddedAppUrl(runningPort(dataFolder) ?? 0, readOrMakeSecrets(dataFolder)))
  await client.connect()
  const { rows } = await client.query<{ entry: string }>(
    `SELECT action || ' ' || (entry_text::json ->> 'address') AS entry FROM audit_entry ORDER BY number`,
  )
  await client.end()
  return rows.map(({ entry }) => entry)
}

function isFree(port: number): Promise<boolean> {
  return new Promise((resolve) => {
    const probe = net.createServer()
    probe.on('error', () => resolve(false))
    probe.listen(port, '127.0.0.1', () => probe.close(() => resolve(true)))
  })
}
