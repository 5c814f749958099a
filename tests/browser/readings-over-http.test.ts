import { v7 as uuid } from 'uuid'
import { cookieOf, expect, test } from '../support/app'
import { makeBakery, type TestPerson } from '../support/bakery'
import { walkReading } from '../support/walks/shift'

type Answer = { refusal?: string; readings?: { ok: boolean; id: string; hash?: string; refusal?: string; isAgain?: boolean }[] }

async function send(url: string, person: TestPerson | null, body: string, headers: Record<string, string> = {}): Promise<{ status: number; body: Answer }> {
  const cookie = person ? await cookieOf(person.sessionSecret, url) : null
  const response = await fetch(`${url}/api/v1/readings`, {
    method: 'POST',
    body,
    headers: { 'Content-Type': 'application/json', Origin: url, ...(cookie && { Cookie: `${cookie.name}=${cookie.value}` }), ...headers },
  })
  expect(response.headers.get('cache-control')).toContain('no-store')
  return { status: response.status, body: (await response.json()) as Answer }
}

test('a reading is kept once however often it is sent, and the book echoes id and hash', async ({ app, bakery }) => {
  const entry = await walkReading({ bakery, neighbour: bakery, look: app.look })
  const first = await send(app.url, bakery.early, JSON.stringify({ readings: [entry, entry, { ...entry, value: '27' }] }))
  expect(first.status).toBe(200)
  expect(first.body.readings?.map(({ ok, id, refusal, isAgain }) => [ok, id, refusal ?? isAgain])).toEqual([
    [true, entry.id, false],
    [true, entry.id, true],
    [false, entry.id, 'reading-clash'],
  ])
  const { rows } = await app.look.query<{ content_hash: string; value_entered: string }>('SELECT content_hash, value_entered FROM reading WHERE id = $1', [entry.id])
  expect(rows).toEqual([{ content_hash: first.body.readings?.[0]?.hash, value_entered: '26.4' }])
  const correction = { id: uuid(), supersedesId: entry.id, repeat: 1, value: '27', unit: '°C', reason: 'typing slip' }
  expect((await send(app.url, bakery.early, JSON.stringify({ readings: [correction] }))).body.readings).toMatchObject([{ ok: true, id: correction.id }])
})

test('a value outside what is usual is kept when it comes confirmed, once however it is sent again', async ({ app, bakery }) => {
  const entry = { ...(await walkReading({ bakery, neighbour: bakery, look: app.look })), value: '600' }
  const refused = await send(app.url, bakery.early, JSON.stringify({ readings: [entry] }))
  expect(refused).toMatchObject({ status: 422, body: { readings: [{ ok: false, refusal: 'odd-reading' }] } })
  const confirmed = { ...entry, confirmed: true }
  const kept = await send(app.url, bakery.early, JSON.stringify({ readings: [confirmed, confirmed, entry] }))
  expect(kept.body.readings?.map(({ ok, isAgain }) => [ok, isAgain])).toEqual([[true, false], [true, true], [true, true]])
  expect((await app.look.query('SELECT 1 FROM reading WHERE id = $1', [entry.id])).rows).toHaveLength(1)
})

test('nobody else’s reading is taken: strangers, another site, the bakery next door', async ({ app, bakery }) => {
  const neighbour = await makeBakery('Next Door', new Date())
  const entry = await walkReading({ bakery, neighbour, look: app.look })
  const body = JSON.stringify({ readings: [entry] })
  expect(await send(app.url, null, body)).toMatchObject({ status: 401, body: { readings: [{ refusal: 'not-signed-in' }] } })
  expect(await send(app.url, bakery.early, body, { Origin: 'https://elsewhere.example' })).toMatchObject({ status: 403, body: { refusal: 'other-site' } })
  expect(await send(app.url, bakery.early, body, { 'Sec-Fetch-Site': 'cross-site' })).toMatchObject({ status: 403 })
  expect(await send(app.url, neighbour.owner, body)).toMatchObject({ status: 422, body: { readings: [{ refusal: 'not-found' }] } })
  expect((await app.look.query('SELECT 1 FROM reading WHERE id = $1', [entry.id])).rows).toEqual([])
})

test('what is not a list of readings is refused as a whole', async ({ app, bakery }) => {
  const status = async (body: string, headers?: Record<string, string>) => (await send(app.url, bakery.early, body, headers)).status
  expect(await status('{"readings":[', undefined)).toBe(400)
  expect(await status('{"readings":[{}]}', { 'Content-Type': 'text/plain' })).toBe(415)
  expect(await status(JSON.stringify({ readings: [{ value: 'x'.repeat(300_000) }] }))).toBe(413)
  expect(await status('{"readings":[]}')).toBe(422)
  expect(await status(JSON.stringify({ readings: Array.from({ length: 101 }, () => ({})) }))).toBe(422)
  expect(await status('{"readings":[{}],"more":1}')).toBe(422)
})
