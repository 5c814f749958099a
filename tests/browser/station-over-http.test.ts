import { withdrawStation } from '../../lib/kitchen/stations/withdraw-station'
import { expect, test } from '../support/app'
import { callerOf, valueOf } from '../support/bakery'
import { enrolledStation, givePin, testPin } from '../support/stations'
import { readyToRead } from '../support/tablet'

type Answer = { status: number; headers: Headers; body: Record<string, unknown> }
type Sent = { cookie?: string; token?: string; body?: object; headers?: Record<string, string> }

async function ask(url: string, what: string, { cookie, token, body, headers }: Sent = {}): Promise<Answer> {
  const response = await fetch(`${url}/api/v1/station${what}`, {
    method: body ? 'POST' : 'GET',
    ...(body ? { body: JSON.stringify(body) } : {}),
    headers: {
      ...(body ? { 'Content-Type': 'application/json', Origin: url } : {}),
      ...(cookie ? { Cookie: cookie } : {}),
      ...(token ? { 'Evendough-Shift': token } : {}),
      ...headers,
    },
  })
  expect(response.headers.get('cache-control')).toContain('no-store')
  return { status: response.status, headers: response.headers, body: (await response.json()) as Answer['body'] }
}

test('a tablet is enrolled by its code, logged on by a PIN, and shut out when it is withdrawn', async ({
  app,
  bakery,
}) => {
  const { code, stationId, dough, trial } = await readyToRead(bakery)
  const { url } = app
  for (const what of ['', '/floor']) expect(await ask(url, what)).toMatchObject({ status: 401 })
  expect(await ask(url, '/enrol', { body: { code: 'XXXX-XXXX' } })).toMatchObject({ status: 422 })
  const elsewhere = { 'Sec-Fetch-Site': 'cross-site' }
  expect(await ask(url, '/enrol', { body: { code }, headers: elsewhere })).toMatchObject({ status: 403 })

  const enrolled = await ask(url, '/enrol', { body: { code } })
  expect(enrolled).toMatchObject({ status: 200, body: { name: 'Bench' } })
  expect(enrolled.body).not.toHaveProperty('secret')
  const set = enrolled.headers.get('set-cookie') ?? ''
  expect(set).toMatch(/^__Host-evendough\.station=[^;]+;/)
  for (const part of ['Path=/', 'Secure', 'HttpOnly', 'SameSite=Strict']) expect(set).toContain(part)
  expect(await ask(url, '/enrol', { body: { code } })).toMatchObject({ status: 422 })
  const cookie = set.split(';')[0] ?? ''

  const { personId } = bakery.early
  const alone = await ask(url, '', { cookie })
  expect(alone).toMatchObject({ status: 200, body: { onShift: null, people: [{ id: personId, name: 'Esi' }] } })
  expect(await ask(url, '/floor', { cookie })).toMatchObject({ status: 403 })
  const pin = { personId, pin: testPin }
  expect(await ask(url, '/log-on', { cookie, body: pin, headers: elsewhere })).toMatchObject({ status: 403 })
  expect(await ask(url, '/log-on', { body: pin })).toMatchObject({ status: 401 })
  const wrong = await ask(url, '/log-on', { cookie, body: { personId, pin: '111111' } })
  expect(wrong).toMatchObject({ status: 422, body: { problems: { pin: expect.any(String) } } })
  const on = await ask(url, '/log-on', { cookie, body: pin })
  expect(on.status).toBe(200)
  const token = String(on.body.shiftToken)
  expect(await ask(url, '', { cookie, token })).toMatchObject({ body: { onShift: { name: 'Esi' } } })
  const floor = await ask(url, '/floor', { cookie, token })
  expect(floor).toMatchObject({
    status: 200,
    body: { doughs: [{ id: dough.batchId, allergens: ['cereals with gluten'] }] },
  })

  // What a dough weighs is for whoever opened its key, by a request of the tablet's own page.
  const weights = `/weights?batchId=${dough.batchId}`
  const open = { body: { batchId: dough.batchId }, cookie, token }
  expect(await ask(url, weights)).toMatchObject({ status: 401 })
  expect(await ask(url, weights, { cookie })).toMatchObject({ status: 403 })
  expect(await ask(url, weights, { cookie, token })).toMatchObject({
    status: 422,
    body: { refusal: 'dough-key-closed', words: expect.any(String) },
  })
  expect(await ask(url, '/open-weights', { ...open, headers: elsewhere })).toMatchObject({ status: 403 })
  expect(await ask(url, weights, { cookie, token })).toMatchObject({ status: 422 })
  expect(await ask(url, '/open-weights', open)).toMatchObject({ status: 200 })
  const list = await ask(url, weights, { cookie, token })
  expect(list).toMatchObject({ status: 200, body: { code: dough.code, unit: 'g', scales: [] } })
  expect(list.body.lines).toHaveLength(5)
  expect(await ask(url, '/weights?batchId=some', { cookie, token })).toMatchObject({ status: 422 })
  const [, next] = trial.batches
  const begin = { batchId: next?.batchId, seenRevision: 1, cleanDownDone: false }
  expect(await ask(url, '/begin', { body: begin })).toMatchObject({ status: 401 })
  expect(await ask(url, '/begin', { cookie, body: begin })).toMatchObject({ status: 403 })
  expect(await ask(url, '/begin', { cookie, token, body: begin, headers: elsewhere })).toMatchObject({ status: 403 })
  // One name of a tap is one beginning; without a name a second one is told that it came too late.
  const named = { 'Evendough-Once': '01a22670-ac00-7439-aa86-2399f59754fb' }
  for (const headers of [named, named])
    expect(await ask(url, '/begin', { cookie, token, body: begin, headers })).toMatchObject({ status: 200 })
  expect(await ask(url, '/begin', { cookie, token, body: begin })).toMatchObject({ status: 422 })

  // A dough is taken out, baked again and exchanged by whoever is on the tablet, from its own page.
  const { batchId } = dough
  const again = { batchId }
  const out = { batchId, seenRevision: 2, to: 'lost', why: 'The dough is lost' }
  const swap = { batchId, seenTurn: 1, otherId: next?.batchId, why: 'The oven is not free' }
  const repairs = [
    ['/move', out],
    ['/bake-again', again],
    ['/exchange', swap],
  ] as const
  for (const [what, body] of repairs) {
    expect(await ask(url, what, { body }), what).toMatchObject({ status: 401 })
    expect(await ask(url, what, { cookie, body }), what).toMatchObject({ status: 403 })
    expect(await ask(url, what, { cookie, token, body, headers: elsewhere }), what).toMatchObject({ status: 403 })
    expect(await ask(url, what, { cookie, token, body: { ...body, more: 1 } }), what).toMatchObject({ status: 422 })
  }
  expect(await ask(url, '/bake-again', { cookie, token, body: again })).toMatchObject({ body: { refusal: 'not-out' } })
  expect(await ask(url, '/exchange', { cookie, token, body: swap })).toMatchObject({
    status: 422,
    body: { refusal: 'exchange-of-waiting' },
  })
  expect(await ask(url, '/move', { cookie, token, body: out })).toMatchObject({ status: 200 })
  const told = async () => (await ask(url, '/floor', { cookie, token })).body.out
  expect(await told()).toEqual([
    {
      id: batchId,
      code: dough.code,
      trialNumber: expect.any(Number),
      formulaName: expect.any(String),
      dayNumber: 1,
      state: 'lost',
      again: null,
      said: `Batch ${dough.code} was lost. Bake it again today.`,
      go: 'Bake it again',
      note: expect.any(String),
    },
  ])
  const once = { 'Evendough-Once': '01a22670-ac00-7439-aa86-2399f59754fc' }
  const made = await ask(url, '/bake-again', { cookie, token, body: again, headers: once })
  expect(made).toMatchObject({ status: 200, body: { code: expect.any(String) } })
  expect((await ask(url, '/bake-again', { cookie, token, body: again, headers: once })).body).toEqual(made.body)
  expect(await ask(url, '/bake-again', { cookie, token, body: again })).toMatchObject({
    status: 422,
    body: { refusal: 'baked-again-already' },
  })
  expect(await told()).toMatchObject([{ again: made.body.code, go: null, note: null }])

  expect(await ask(url, '/go-on', { cookie, body: { shiftToken: token } })).toMatchObject({ status: 200 })
  expect(await ask(url, '/log-off', { cookie, token, body: {} })).toMatchObject({ status: 200 })
  expect(await ask(url, '/go-on', { cookie, body: { shiftToken: token } })).toMatchObject({
    status: 422,
    body: { refusal: 'pin-again' },
  })

  let last = await ask(url, '/log-on', { cookie, body: { personId, pin: '111111' } })
  for (let tries = 0; last.status === 422 && tries < 20; tries++)
    last = await ask(url, '/log-on', { cookie, body: { personId, pin: '111111' } })
  expect(last).toMatchObject({ status: 429, body: { refusal: 'too-many-pins' } })

  valueOf(await withdrawStation.call(callerOf(bakery.owner.sessionSecret, new Date()), { stationId }))
  for (const what of ['', '/floor']) expect(await ask(url, what, { cookie, token })).toMatchObject({ status: 401 })
})

test('the document has no data, no inline script or style, and a policy of its own; its files never change', async ({
  app,
}) => {
  const document = await fetch(`${app.url}/station`)
  const html = await document.text()
  expect(document.status).toBe(200)
  const policy = document.headers.get('content-security-policy') ?? ''
  expect(policy).toContain("default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; worker-src 'self'")
  expect(policy).not.toMatch(/unsafe-inline|nonce/)
  expect(document.headers.get('set-cookie')).toBeNull()
  expect(html).not.toMatch(/<style|<script(?![^>]* src=)|\son\w+=|\sstyle=/)
  const files = [...html.matchAll(/(?:src|href)="(\/station\/files\/[^"]+)"/g)].map(([, file = '']) => file)
  expect(files).toHaveLength(2)
  for (const file of files) {
    const answer = await fetch(`${app.url}${file}`)
    expect(answer.status).toBe(200)
    expect(answer.headers.get('cache-control')).toBe('public, max-age=31536000, immutable')
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff')
    await answer.arrayBuffer()
  }
  for (const file of ['nothing.js', '..%2Fdocument.html', '..%2Fworker.js', 'document.html'])
    expect((await fetch(`${app.url}/station/files/${file}`)).status, file).toBe(404)
  const worker = await fetch(`${app.url}/station-worker.js`)
  expect(worker.headers.get('cache-control')).toBe('no-cache')
  expect(await worker.text()).toContain(files[0])
  const [, manifest = ''] = /rel="manifest" href="([^"]+)"/.exec(html) ?? []
  const home = await fetch(`${app.url}${manifest}`)
  expect(home.headers.get('content-type')).toBe('application/manifest+json')
  // It opens the page that the worker keeps, and nothing beside it; its icon is there (W3C Web Application Manifest).
  const told = (await home.json()) as { start_url: string; scope: string; display: string; icons: { src: string }[] }
  expect(told).toMatchObject({ start_url: '/station', scope: '/station', display: 'standalone' })
  expect((await fetch(`${app.url}${told.icons[0]?.src}`)).headers.get('content-type')).toContain('image/svg+xml')
  // The desk's page, whose address begins alike, keeps the policy of pages.
  const desk = await fetch(`${app.url}/stations`, { redirect: 'manual' })
  expect(desk.headers.get('content-security-policy')).toContain("'nonce-")
})

test('a tablet is there while the database is away', async ({ app }) => {
  await app.gate.shut()
  try {
    expect((await fetch(`${app.url}/station`)).status).toBe(200)
  } finally {
    await app.gate.open()
  }
})

test('a tablet of a month is given another key at a log-on, in its cookie alone, and goes on with it', async ({
  app: { url },
  bakery,
}) => {
  const monthAgo = new Date(Date.now() - 30 * 24 * 60 * 60_000)
  const { secret } = await enrolledStation(bakery, 'Old bench', monthAgo)
  await givePin(bakery.early, testPin, new Date())
  const body = { personId: bakery.early.personId, pin: testPin }
  const first = await ask(url, '/log-on', { cookie: `__Host-evendough.station=${secret}`, body })
  const set = first.headers.get('set-cookie') ?? ''
  expect(set).toMatch(new RegExp(`^__Host-evendough\\.station=[\\w-]{22}\\.${secret};`))
  for (const part of ['Path=/', 'Secure', 'HttpOnly', 'SameSite=Strict']) expect(set).toContain(part)
  expect(first.body).not.toHaveProperty('secret')
  const [cookie] = set.split(';')
  const second = await ask(url, '/log-on', { cookie, body })
  expect(second).toMatchObject({ status: 200 })
  expect(second.headers.get('set-cookie')).toBeNull()
  const was = await ask(url, '', { cookie: `__Host-evendough.station=${secret}` })
  expect(was).toMatchObject({ status: 401 })
  expect(await ask(url, '', { cookie })).toMatchObject({ status: 200, body: { station: { name: 'Old bench' } } })
})
