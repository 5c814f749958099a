import http from 'node:http'
import type { Page } from 'playwright/test'
import { v7 as uuid } from 'uuid'
import { sessionIdleMs } from '../../lib/auth/session-life'
import { findFreePort } from '../../lib/ops/find-free-port'
import { serveApp } from '../../lib/ops/serve'
import { noteCause } from '../../lib/kitchen/shifts/note-cause'
import { takeEntries } from '../../lib/kitchen/intake/take-entries'
import { signOut } from '../../lib/kitchen/people/sign-out'
import { chooseLanguage } from '../../lib/kitchen/people/choose-language'
import { cookieOf, expect, test, type App } from '../support/app'
import { callerOf, valueOf, type TestBakery, type TestPerson } from '../support/bakery'
import { enrolAndLogOn, keepNumber, openPlace, openTablet, readyToRead } from '../support/tablet'

const now = () => new Date()

/** What comes over a stream, or the status that refuses it. */
async function streamOf(url: string, cookie: string | null, method = 'GET') {
  const heard = { status: 0, type: '', caching: '', coding: '', text: '', isOver: false }
  const request = http.request(url, {
    method,
    headers: { ...(cookie ? { Cookie: cookie } : {}), 'Accept-Encoding': 'gzip' },
  })
  request.on('error', () => (heard.isOver = true))
  request.on('response', (response) => {
    heard.status = response.statusCode ?? 0
    heard.type = response.headers['content-type'] ?? ''
    heard.caching = response.headers['cache-control'] ?? ''
    heard.coding = response.headers['content-encoding'] ?? ''
    response.setEncoding('utf8')
    response.on('data', (text: string) => (heard.text += text))
    response.on('close', () => (heard.isOver = true))
  })
  request.end()
  await expect.poll(() => heard.status, { timeout: 30_000 }).toBeGreaterThan(0)
  return { heard, leave: () => request.destroy() }
}

async function cookieHeader({ sessionSecret }: TestPerson, url: string): Promise<string> {
  const { name, value } = await cookieOf(sessionSecret, url)
  return `${name}=${value}`
}

/** Some change of the bakery's book, by somebody else at the desk. */
async function change({ late }: TestBakery) {
  valueOf(await chooseLanguage.call(callerOf(late.sessionSecret, now()), { language: null }))
}

const looksIn = ({ text }: { text: string }) => text.split('data: look-again').length - 1

/** Counts what a page asks of the app by itself. */
function looksOf(page: Page) {
  const counted = { looks: 0 }
  page.on('request', (request) => {
    if (request.method() === 'POST' && request.headers()['next-action']) counted.looks += 1
  })
  return counted
}

/** Waits until the page hears of changes. */
const isFollowing = (page: Page) =>
  page.waitForResponse((response) => response.url().includes('/api/live') && response.status() === 200)

/** A reading at the tablet's place, straight into the book. */
async function readAtDesk(person: TestPerson, batchId: string, measureId: string, value: string) {
  const entry = {
    kind: 'reading',
    id: uuid(),
    batchId,
    measureId,
    piece: null,
    factorLevel: null,
    repeat: 1,
    value,
    unit: '°C',
    takenAt: now().toISOString(),
  }
  const { entries } = valueOf(await takeEntries.call(callerOf(person.sessionSecret, now()), { entries: [entry] }))
  expect(entries).toMatchObject([{ outcome: 'kept' }])
}

test('the desk sees what a tablet read without a reload, and the tablet what the desk read', async ({
  app,
  bakery,
  browser,
  as,
}) => {
  const { code, dough, trial } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  await enrolAndLogOn(tablet, code)
  const desk = await as(bakery.head)
  const following = isFollowing(desk)
  await desk.goto(`/shift/${dough.batchId}`)
  await following
  let loads = 0
  desk.on('load', () => (loads += 1))

  await openPlace(tablet, dough.code, 'Dough temperature', 'Whole dough')
  await keepNumber(tablet, '26.4')
  await expect(desk.getByText('26.4 °C').first()).toBeAttached()
  expect(loads).toBe(0)

  const waterId = trial.measures['water-added']
  if (!waterId) throw new Error('water is read')
  const mass = {
    kind: 'reading',
    id: uuid(),
    batchId: dough.batchId,
    measureId: waterId,
    piece: null,
    factorLevel: null,
  }
  const entry = { ...mass, repeat: 1, value: '655', unit: 'g', takenAt: now().toISOString(), confirmed: true }
  const caller = callerOf(bakery.late.sessionSecret, now())
  expect(valueOf(await takeEntries.call(caller, { entries: [entry] })).entries).toMatchObject([{ outcome: 'kept' }])
  await expect(tablet.page.locator('section').filter({ hasText: 'Water added' })).toContainText('655', {
    timeout: 30_000,
  })
  expect(tablet.faults).toEqual([])
  await tablet.context.close()
})

test('a stream says only that there is something to look at, to those of the bakery, whole and at once', async ({
  app,
  bakery,
}) => {
  const cookie = await cookieHeader(bakery.early, app.url)
  const { heard, leave } = await streamOf(`${app.url}/api/live`, cookie)
  expect(heard).toMatchObject({
    status: 200,
    type: 'text/event-stream; charset=utf-8',
    caching: 'no-store, no-transform',
    coding: '',
  })
  await expect.poll(() => looksIn(heard)).toBe(1)
  await change(bakery)
  await expect.poll(() => looksIn(heard)).toBe(2)
  expect(heard.text.replaceAll('data: look-again\n\n', '').replaceAll(':\n\n', '')).toBe('')
  leave()

  for (const address of ['/api/live', '/api/v1/station/live']) {
    const refused = await streamOf(`${app.url}${address}`, null)
    expect(refused.heard.status).toBe(401)
    expect((await streamOf(`${app.url}${address}`, cookie, 'HEAD')).heard.status).toBe(405)
  }
  // A tablet's stream is no way in for somebody at the desk.
  expect((await streamOf(`${app.url}/api/v1/station/live`, cookie)).heard.status).toBe(401)
})

test('a stream ends when its session does, and one process listens once for all that follow', async ({
  app,
  bakery,
}) => {
  const cookie = await cookieHeader(bakery.early, app.url)
  const { heard } = await streamOf(`${app.url}/api/live`, cookie)
  const second = await streamOf(`${app.url}/api/live`, await cookieHeader(bakery.late, app.url))
  await expect.poll(() => looksIn(heard)).toBe(1)
  const { rows } = await app.look.query<{ n: number }>(
    `SELECT count(*)::int AS n FROM pg_stat_activity WHERE application_name = 'evendough-listener'`,
  )
  expect(rows).toEqual([{ n: 1 }])
  valueOf(await signOut.call(callerOf(bakery.early.sessionSecret, now()), {}))
  await expect.poll(() => heard.isOver).toBe(true)
  expect(second.heard.isOver).toBe(false)
  second.leave()
  expect((await streamOf(`${app.url}/api/live`, cookie)).heard.status).toBe(401)
})

async function seenAt(app: App, { personId }: TestPerson): Promise<Date> {
  const { rows } = await app.look.query<{ at: Date }>('SELECT last_seen_at AS at FROM session WHERE person_id = $1', [
    personId,
  ])
  if (!rows[0]) throw new Error('a person has a session')
  return rows[0].at
}

/** As if a person had been at the desk for the last time then. */
async function leftAt(app: App, { personId }: TestPerson, at: Date): Promise<void> {
  await app.look.query('UPDATE session SET opened_at = $2, last_seen_at = $2 WHERE person_id = $1', [personId, at])
}

test('a page that is left open shows what comes, and that is no use of the session, which ends in its time', async ({
  app,
  bakery,
  as,
  expectNoise,
}) => {
  // The stream of whoever is signed out.
  expectNoise(/401/)
  const { dough, trial } = await readyToRead(bakery)
  const temperature = trial.measures['dough-temp']
  if (!temperature) throw new Error('the temperature is read')
  const page = await as(bakery.head)
  const following = isFollowing(page)
  await page.goto(`/shift/${dough.batchId}`)
  await following
  // As if it had been opened twenty minutes ago, and not touched since.
  const ago = new Date(Date.now() - 20 * 60_000)
  await leftAt(app, bakery.head, ago)
  await readAtDesk(bakery.late, dough.batchId, temperature, '25.5')
  await expect(page.getByText('25.5 °C').first()).toBeAttached()
  expect(await seenAt(app, bakery.head)).toEqual(ago)
  // What somebody does there is a use of it.
  await page.getByRole('link', { name: 'Trials' }).first().click()
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Trials')
  expect((await seenAt(app, bakery.head)).getTime()).toBeGreaterThan(ago.getTime())

  await page.goto(`/shift/${dough.batchId}`)
  const longAgo = new Date(Date.now() - sessionIdleMs - 1_000)
  await leftAt(app, bakery.head, longAgo)
  await change(bakery)
  await expect(page).toHaveURL(/\/sign-in/, { timeout: 30_000 })
})

test('what is half typed stays as it is while the book changes; the page says so, and catches up once it is sent', async ({
  bakery,
  as,
}) => {
  const { dough, trial } = await readyToRead(bakery)
  const temperature = trial.measures['dough-temp']
  if (!temperature) throw new Error('the temperature is read')
  const page = await as(bakery.early)
  const following = isFollowing(page)
  await page.goto(`/shift/${dough.batchId}`)
  await following
  await page.getByText('Note what happened').click()
  const what = page.getByLabel('What happened?')
  await what.fill('The door stood open')
  const cause = { batchId: dough.batchId, what: 'Oven was off for a while', noticedMinAgo: 1 }
  valueOf(await noteCause.call(callerOf(bakery.late.sessionSecret, now()), cause))
  const behind = page.getByText('The book has changed since')
  await expect(behind).toBeVisible()
  await expect(what).toHaveValue('The door stood open')
  await expect(page.getByText('Oven was off for a while')).toBeHidden()
  await what.press('Enter')
  await expect(page.getByText('Oven was off for a while')).toBeVisible()
  await expect(page.getByText('The door stood open').first()).toBeVisible()
  await expect(behind).toBeHidden()

  // A reading that is being typed keeps nothing back, and stays where it is typed.
  const field = page.getByRole('textbox', { name: 'Dough temperature, Batch, reading 1' })
  await field.fill('26')
  await readAtDesk(bakery.late, dough.batchId, temperature, '25.5')
  await expect(page.getByText('25.5 °C').first()).toBeAttached()
  await expect(page.getByRole('textbox', { name: 'Dough temperature, Batch' })).toHaveValue('26')
  await expect(page.getByText('before the book got what it holds now')).toBeVisible()
})

test('without a stream a page asks now and then, and a book that is away leaves it as it is', async ({
  app,
  bakery,
  as,
  expectNoise,
}) => {
  test.setTimeout(90_000)
  expectNoise(/Failed to load resource|ERR_|EventSource|503/)
  const { dough, trial } = await readyToRead(bakery)
  const temperature = trial.measures['dough-temp']
  if (!temperature) throw new Error('the temperature is read')
  const page = await as(bakery.early)
  await page.route('**/api/live**', (route) => route.fulfill({ status: 429, body: '' }))
  const counted = looksOf(page)
  await page.goto(`/shift/${dough.batchId}`)
  await expect(page.getByRole('heading', { level: 1 })).toContainText(dough.code)
  await readAtDesk(bakery.late, dough.batchId, temperature, '25.5')
  await expect(page.getByText('25.5 °C').first()).toBeAttached({ timeout: 30_000 })

  await app.gate.shut()
  try {
    const { looks } = counted
    await expect.poll(() => counted.looks, { timeout: 25_000 }).toBeGreaterThan(looks)
    await expect(page.getByText('25.5 °C').first()).toBeAttached()
  } finally {
    await app.gate.open()
  }
})

test('a stop ends the streams, and waits for none of them', async ({ app: _, bakery }) => {
  const port = await findFreePort()
  // On the database of this worker's own app.
  const served = await serveApp(port, {})
  const url = `http://localhost:${port}`
  const { heard } = await streamOf(`${url}/api/live`, await cookieHeader(bakery.early, url))
  expect(heard.status).toBe(200)
  await served.stop()
  expect(heard.isOver).toBe(true)
  // One that had to be killed ends with another code.
  expect(await served.ended).toBe(143)
})
