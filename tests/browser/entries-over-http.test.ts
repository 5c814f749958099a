import { v7 as uuid } from 'uuid'
import { cookieOf, expect, test } from '../support/app'
import { makeBakery, type TestBakery, type TestPerson } from '../support/bakery'
import { schemaOfDocument } from '../support/open-api'
import { walkReading } from '../support/walks/shift'

type Answer = {
  refusal?: string
  words?: string
  entries?: { outcome: string; id: string; hash?: string; refusal?: string; isAgain?: boolean }[]
}

async function send(
  url: string,
  person: TestPerson | null,
  body: string,
  headers: Record<string, string> = {},
): Promise<{ status: number; body: Answer }> {
  const cookie = person ? await cookieOf(person.sessionSecret, url) : null
  const response = await fetch(`${url}/api/v1/entries`, {
    method: 'POST',
    body,
    headers: {
      'Content-Type': 'application/json',
      Origin: url,
      ...(cookie && { Cookie: `${cookie.name}=${cookie.value}` }),
      ...headers,
    },
  })
  expect(response.headers.get('cache-control')).toContain('no-store')
  const answer = (await response.json()) as Answer
  expect(schemaOfDocument(response.status).safeParse(answer).error).toBeUndefined()
  return { status: response.status, body: answer }
}

const walkEntry = async (app: { look: Parameters<typeof walkReading>[0]['look'] }, bakery: TestBakery) => ({
  kind: 'reading',
  ...(await walkReading({ bakery, neighbour: bakery, look: app.look })),
})

test('a reading is kept once however often it is sent, and the book echoes id and hash', async ({ app, bakery }) => {
  const entry = await walkEntry(app, bakery)
  const first = await send(
    app.url,
    bakery.early,
    JSON.stringify({ entries: [entry, entry, { ...entry, value: '27' }] }),
  )
  expect(first.status).toBe(200)
  expect(first.body.entries?.map(({ outcome, id, refusal, isAgain }) => [outcome, id, refusal ?? isAgain])).toEqual([
    ['kept', entry.id, false],
    ['kept', entry.id, true],
    ['aside', entry.id, 'aside-id-taken'],
  ])
  const { rows } = await app.look.query<{ content_hash: string; value_entered: string }>(
    'SELECT content_hash, value_entered FROM reading WHERE id = $1',
    [entry.id],
  )
  expect(rows).toEqual([{ content_hash: first.body.entries?.[0]?.hash, value_entered: '26.4' }])
  const correction = {
    kind: 'correction',
    id: uuid(),
    supersedesId: entry.id,
    repeat: 1,
    value: '27',
    unit: '°C',
    reason: 'typing slip',
  }
  expect((await send(app.url, bakery.early, JSON.stringify({ entries: [correction] }))).body.entries).toMatchObject([
    { outcome: 'kept', id: correction.id },
  ])
})

test('an entry whose place is taken is kept aside, and answered 422 with its id and hash however often it comes', async ({
  app,
  bakery,
}) => {
  const there = await walkEntry(app, bakery)
  const late = { ...there, id: uuid(), value: '27.1' }
  await send(app.url, bakery.early, JSON.stringify({ entries: [there] }))
  const first = await send(app.url, bakery.early, JSON.stringify({ entries: [late] }))
  const { rows } = await app.look.query<{ hash: string; why: string }>(
    'SELECT hash, why FROM entry_to_settle WHERE entry_id = $1',
    [late.id],
  )
  expect(first).toMatchObject({
    status: 422,
    body: { entries: [{ outcome: 'aside', id: late.id, hash: rows[0]?.hash, refusal: 'aside-place-taken' }] },
  })
  expect(await send(app.url, bakery.early, JSON.stringify({ entries: [late] }))).toEqual(first)
  expect((await app.look.query('SELECT 1 FROM entry_to_settle WHERE entry_id = $1', [late.id])).rows).toHaveLength(1)
})

test('a value outside what is usual is kept when it comes confirmed, once however it is sent again', async ({
  app,
  bakery,
}) => {
  const entry = { ...(await walkEntry(app, bakery)), value: '600' }
  const refused = await send(app.url, bakery.early, JSON.stringify({ entries: [entry] }))
  expect(refused).toMatchObject({ status: 422, body: { entries: [{ outcome: 'refused', refusal: 'odd-reading' }] } })
  const confirmed = { ...entry, confirmed: true }
  const kept = await send(app.url, bakery.early, JSON.stringify({ entries: [confirmed, confirmed, entry] }))
  expect(kept.body.entries?.map(({ outcome, isAgain }) => [outcome, isAgain])).toEqual([
    ['kept', false],
    ['kept', true],
    ['kept', true],
  ])
  expect((await app.look.query('SELECT 1 FROM reading WHERE id = $1', [entry.id])).rows).toHaveLength(1)
})

test('nobody else’s reading is taken: strangers, another site, the bakery next door', async ({ app, bakery }) => {
  const neighbour = await makeBakery('Next Door', new Date())
  const entry = await walkEntry(app, bakery)
  const body = JSON.stringify({ entries: [entry] })
  expect(await send(app.url, null, body)).toMatchObject({
    status: 401,
    body: { refusal: 'not-signed-in', words: expect.stringContaining('signed out') as unknown },
  })
  expect(await send(app.url, bakery.early, body, { Origin: 'https://elsewhere.example' })).toMatchObject({
    status: 403,
    body: { refusal: 'other-site' },
  })
  expect(await send(app.url, bakery.early, body, { 'Sec-Fetch-Site': 'cross-site' })).toMatchObject({ status: 403 })
  expect(await send(app.url, neighbour.owner, body)).toMatchObject({
    status: 422,
    body: { entries: [{ refusal: 'not-found' }] },
  })
  expect((await app.look.query('SELECT 1 FROM reading WHERE id = $1', [entry.id])).rows).toEqual([])
})

test('what names a shift is a tablet’s: the desk’s session in the same browser does not take it as its own', async ({
  app,
  bakery,
}) => {
  const entry = await walkEntry(app, bakery)
  const body = JSON.stringify({ entries: [entry] })
  for (const shift of ['', 'of-nobody'])
    expect(await send(app.url, bakery.early, body, { 'Evendough-Shift': shift })).toMatchObject({ status: 401 })
  expect((await app.look.query('SELECT 1 FROM reading WHERE id = $1', [entry.id])).rows).toEqual([])
})

test('what is not a list of entries is refused as a whole', async ({ app, bakery }) => {
  const status = async (body: string, headers?: Record<string, string>) =>
    (await send(app.url, bakery.early, body, headers)).status
  expect(await status('{"entries":[', undefined)).toBe(400)
  expect(await status('{"entries":[{}]}', { 'Content-Type': 'text/plain' })).toBe(415)
  expect(await status(JSON.stringify({ entries: [{ value: 'x'.repeat(300_000) }] }))).toBe(413)
  expect(await status('{"entries":[]}')).toBe(422)
  expect(await status(JSON.stringify({ entries: Array.from({ length: 101 }, () => ({})) }))).toBe(422)
  expect(await status('{"entries":[{}],"more":1}')).toBe(422)
})
