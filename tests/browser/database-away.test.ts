import { cookieOf, expect, test } from '../support/app'
import { callAction } from '../support/call-action'

const away = 'The bakery’s book does not answer'
const html = { Accept: 'text/html' }

// A field that is not there is a fault at once, not after the whole minute.
test.use({ actionTimeout: 10_000 })

test.beforeEach(async ({ app, expectNoise }) => {
  // What a browser says of an answer of 503, which is what is wanted here.
  expectNoise(/503 \(Service Unavailable\)/)
  await app.gate.open()
})
test.afterEach(({ app }) => app.gate.open())

test('while the database is away every page says so with 503, in words, and answers by itself afterwards', async ({
  app,
  bakery,
}) => {
  const { name, value } = await cookieOf(bakery.owner.sessionSecret, app.url)
  const open = (path: string, headers: Record<string, string> = html) =>
    fetch(app.url + path, { redirect: 'manual', headers: { Cookie: `${name}=${value}`, ...headers } })
  // What was asked in the moment before a database froze waits with it.
  const statusSoon = (path: string) =>
    fetch(app.url + path, {
      headers: { Cookie: `${name}=${value}`, ...html },
      signal: AbortSignal.timeout(5_000),
    }).then(
      (answer) => answer.status,
      () => 0,
    )
  const pages = ['/', '/team', '/calculators', '/sign-in', '/set-up/guessed', '/join/guessed', '/no-such-page']
  const before = await Promise.all(pages.map(async (page) => (await open(page)).status))
  for (const way of ['shut', 'freeze'] as const) {
    if (way === 'shut') await app.gate.shut()
    else app.gate.freeze()
    await expect.poll(() => statusSoon('/team'), { timeout: 30_000 }).toBe(503)
    for (const page of pages) {
      const answer = await open(page)
      const text = await answer.text()
      expect(answer.status, page).toBe(503)
      expect(Number(answer.headers.get('retry-after')), page).toBeGreaterThan(0)
      expect(answer.headers.get('cache-control'), page).toContain('no-store')
      expect(answer.headers.get('content-security-policy'), page).toMatch(
        /^default-src 'none'; style-src 'nonce-[^']+'/,
      )
      expect(text, page).toContain(away)
      expect(text, page).not.toContain('no longer works')
    }
    // Whoever does not say what they take gets the page, and the router's own fetches a word.
    expect(await (await open('/team', {})).text()).toContain(away)
    const part = await open('/team', { RSC: '1', 'Sec-Fetch-Dest': 'empty' })
    expect([part.status, part.headers.get('retry-after')]).toEqual([503, '5'])
    // What needs no database goes on.
    expect((await open('/icon.svg')).status).toBe(200)
    await app.gate.open()
    await expect.poll(async () => (await open('/team')).status, { timeout: 20_000 }).toBe(200)
  }
  expect(await Promise.all(pages.map(async (page) => (await open(page)).status))).toEqual(before)
})

test('while the database is away every write is refused with 503 and nothing of it is kept', async ({
  app,
  bakery,
}) => {
  const { name, value } = await cookieOf(bakery.owner.sessionSecret, app.url)
  const cookie = `${name}=${value}`
  await app.gate.shut()
  const action = await callAction({
    url: app.url,
    page: '/team',
    action: 'app/(desk)/team/actions.ts#invite',
    bound: [],
    fields: { name: 'Ida', email: 'ida@mill-row.example', role: 'shift_baker' },
    cookie,
  })
  expect([action.status, action.headers.get('retry-after')]).toEqual([503, '5'])
  const headers = { Origin: app.url, Cookie: cookie }
  const signOut = await fetch(`${app.url}/sign-out`, { method: 'POST', headers, redirect: 'manual' })
  expect([signOut.status, await signOut.text()]).toEqual([
    503,
    'The bakery’s book does not answer. Nothing was kept; try again in a moment.',
  ])
  const entries = await fetch(`${app.url}/api/v1/entries`, {
    method: 'POST',
    headers: { ...headers, 'Content-Type': 'application/json' },
    body: JSON.stringify({ entries: [{ id: 'x' }] }),
  })
  expect([entries.status, entries.headers.get('retry-after')]).toEqual([503, '5'])
  expect(await entries.json()).toMatchObject({ refusal: 'away' })
  const { csrfToken } = (await (await fetch(`${app.url}/api/auth/csrf`)).json()) as { csrfToken: string }
  expect(csrfToken).not.toBe('')
  await app.gate.open()
  const { rows } = await app.look.query<{ n: string }>('SELECT count(*) n FROM invitation WHERE bakery_id = $1', [
    bakery.bakeryId,
  ])
  expect(rows[0]?.n).toBe('0')
})

test('a form sent while the database is away says that nothing was kept, keeps what was typed, and can be sent again', async ({
  app,
  as,
  bakery,
}) => {
  const page = await as(bakery.owner)
  await page.goto('/team')
  await page.getByRole('textbox', { name: 'Name' }).fill('Ida')
  await page.getByRole('textbox', { name: 'Signs in with' }).fill('ida@mill-row.example')
  await app.gate.shut()
  await page.getByRole('button', { name: 'Make the invitation' }).click()
  await expect(
    page.getByRole('alert').filter({ hasText: 'Nothing was kept; what you typed is still here.' }),
  ).toBeVisible()
  await expect(page.getByRole('textbox', { name: 'Name' })).toHaveValue('Ida')
  await expect(page.getByRole('textbox', { name: 'Signs in with' })).toHaveValue('ida@mill-row.example')
  await app.gate.open()
  await page.getByRole('button', { name: 'Make the invitation' }).click()
  await expect
    .poll(
      async () => (await app.look.query('SELECT 1 FROM invitation WHERE bakery_id = $1', [bakery.bakeryId])).rowCount,
    )
    .toBe(1)
})

test('a form whose answer is lost on the way says that it is not certain, and keeps what was typed', async ({
  as,
  bakery,
  expectNoise,
}) => {
  expectNoise(/ERR_FAILED/)
  const page = await as(bakery.owner)
  await page.goto('/team')
  await page.getByRole('textbox', { name: 'Name' }).fill('Ida')
  await page.getByRole('textbox', { name: 'Signs in with' }).fill('ida@mill-row.example')
  await page.route('**/team', (route) => (route.request().method() === 'POST' ? route.abort() : route.continue()))
  await page.getByRole('button', { name: 'Make the invitation' }).click()
  await expect(page.getByRole('alert').filter({ hasText: 'it is not certain whether this was kept' })).toBeVisible()
  await expect(page.getByRole('textbox', { name: 'Name' })).toHaveValue('Ida')
})

test('a tap on a link while the database is away shows the same words, and the page comes when it is back', async ({
  app,
  as,
  bakery,
}) => {
  const page = await as(bakery.owner)
  await page.goto('/team')
  await app.gate.shut()
  await page.getByRole('link', { name: 'Stores' }).first().click()
  await expect(page.getByRole('heading', { name: away })).toBeVisible()
  await app.gate.open()
  await page.getByRole('link', { name: 'Try again' }).click()
  await expect(page).toHaveURL(/\/stores/)
  await expect(page.getByRole('heading', { name: away })).toHaveCount(0)
})
