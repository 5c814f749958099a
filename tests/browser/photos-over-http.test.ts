import sharp from 'sharp'
import { v7 as uuid } from 'uuid'
import { cookieOf, expect, test } from '../support/app'
import { makeApprovedTrial } from '../support/approved-trial'
import { makeBakery, type TestPerson } from '../support/bakery'
import { fromCamera, noise } from '../support/made-pictures'
import { pieceToSend, saidOf, sha256 } from '../support/send-photo'

type Answer = { status: number; body: Record<string, unknown> }

/** As somebody, or nobody, calls the interface. */
function callerAt(url: string, person: TestPerson | null) {
  const headersOf = async (more: Record<string, string>) => {
    const cookie = person ? await cookieOf(person.sessionSecret, url) : null
    return { Origin: url, ...(cookie && { Cookie: `${cookie.name}=${cookie.value}` }), ...more }
  }
  const answerOf = async (response: Response): Promise<Answer> => {
    expect(response.headers.get('cache-control')).toContain('no-store')
    return { status: response.status, body: (await response.json()) as Record<string, unknown> }
  }
  return {
    say: async (said: object, more: Record<string, string> = {}) =>
      answerOf(
        await fetch(`${url}/api/v1/photos`, {
          method: 'POST',
          body: JSON.stringify(said),
          headers: await headersOf({ 'Content-Type': 'application/json', ...more }),
        }),
      ),
    put: async (piece: ReturnType<typeof pieceToSend>, more: Record<string, string> = {}) =>
      answerOf(
        await fetch(`${url}/api/v1/photos/${piece.photoId}/pieces/${piece.number}`, {
          method: 'PUT',
          body: piece.bytes,
          headers: await headersOf({
            'Content-Type': 'application/octet-stream',
            'Evendough-Hash': piece.hash,
            ...more,
          }),
        }),
      ),
    get: async (address: string) => fetch(`${url}${address}`, { redirect: 'manual', headers: await headersOf({}) }),
  }
}

test('a photo comes in pieces, and is served to its bakery alone, as a picture and as nothing else', async ({
  app,
  bakery,
}) => {
  const { batches } = await makeApprovedTrial(bakery, { now: new Date() })
  const large = await noise(480, 480).png().toBuffer()
  const said = saidOf(large, batches[0]!.batchId, { takenAt: new Date().toISOString() })
  const early = callerAt(app.url, bakery.early)
  expect(await early.say(said)).toMatchObject({ status: 200, body: { outcome: 'lacks', pieces: [0, 1, 2] } })
  for (const number of [0, 1, 2]) {
    const piece = pieceToSend(large, said.id, number)
    expect(await early.put(piece)).toEqual({ status: 200, body: { number, hash: piece.hash } })
  }
  const kept = await early.say(said)
  expect(kept).toMatchObject({ status: 200, body: { outcome: 'kept', sentHash: sha256(large), isAgain: false } })
  expect((await early.say(said)).body).toEqual({ ...kept.body, isAgain: true })

  const late = callerAt(app.url, bakery.late)
  const shown = await late.get(`/api/v1/photos/${said.id}`)
  expect(shown.status).toBe(200)
  expect(Object.fromEntries(shown.headers)).toMatchObject({
    'content-type': 'image/jpeg',
    'content-disposition': `inline; filename="photo-${said.id}.jpg"`,
    'x-content-type-options': 'nosniff',
    'content-security-policy': "default-src 'none'; sandbox",
    'cross-origin-resource-policy': 'same-origin',
    'cache-control': 'private, max-age=3600',
  })
  expect(sha256(new Uint8Array(await shown.arrayBuffer()))).toBe(kept.body.hash)
  const small = new Uint8Array(await (await late.get(`/api/v1/photos/${said.id}?small`)).arrayBuffer())
  expect(await sharp(small).metadata()).toMatchObject({ format: 'jpeg', width: 320 })

  const neighbour = await makeBakery('Next Door', new Date())
  const others: [TestPerson | null, number][] = [
    [neighbour.owner, 404],
    [null, 401],
  ]
  for (const [person, status] of others) {
    const answer = await callerAt(app.url, person).get(`/api/v1/photos/${said.id}`)
    expect([answer.status, await answer.text()]).toEqual([status, ''])
    expect(answer.headers.get('cache-control')).toBe('no-store')
  }
  for (const guess of [uuid(), '..%2F..%2Fetc%2Fpasswd', '%00', 'x'.repeat(4_000)])
    expect([400, 404]).toContain((await early.get(`/api/v1/photos/${guess}`)).status)
})

test('who may not, and what is not as it should be, leaves nothing', async ({ app, bakery }) => {
  const { batches } = await makeApprovedTrial(bakery, { now: new Date() })
  const neighbour = await makeBakery('Next Door', new Date())
  const sent = await fromCamera()
  const said = saidOf(sent, batches[0]!.batchId, { takenAt: new Date().toISOString() })
  const piece = pieceToSend(sent, said.id, 0)
  const [early, nobody, theirs] = [bakery.early, null, neighbour.owner].map((person) => callerAt(app.url, person))
  expect(await nobody!.say(said)).toMatchObject({ status: 401, body: { refusal: 'not-signed-in' } })
  expect(await theirs!.say(said)).toMatchObject({ status: 422, body: { refusal: 'not-found' } })
  const elsewheres: Record<string, string>[] = [
    { Origin: 'https://elsewhere.example' },
    { 'Sec-Fetch-Site': 'cross-site' },
  ]
  for (const elsewhere of elsewheres) {
    expect(await early!.say(said, elsewhere)).toMatchObject({ status: 403, body: { refusal: 'other-site' } })
    expect(await early!.put(piece, elsewhere)).toMatchObject({ status: 403, body: { refusal: 'other-site' } })
  }
  expect(await early!.say(said, { 'Content-Type': 'text/plain' })).toMatchObject({ status: 415 })
  expect(await early!.say({ ...said, note: 'x'.repeat(5_000) })).toMatchObject({ status: 413 })
  expect(await early!.say({ ...said, bytes: 9 * 1024 * 1024 })).toMatchObject({
    status: 422,
    body: { refusal: 'photo-too-large', words: expect.stringContaining('8 MB') },
  })
  const { rows } = await app.look.query('SELECT 1 FROM coming_photo WHERE bakery_id = $1', [bakery.bakeryId])
  expect(rows).toEqual([])

  await early!.say(said)
  expect(await nobody!.put(piece)).toMatchObject({ status: 401 })
  expect(await theirs!.put(piece)).toMatchObject({ status: 422, body: { refusal: 'not-found' } })
  expect(await early!.put(piece, { 'Content-Type': 'image/jpeg' })).toMatchObject({ status: 415 })
  expect(await early!.put(piece, { 'Evendough-Hash': 'f'.repeat(64) })).toMatchObject({
    body: { refusal: 'photo-cut-off' },
  })
  const whole = { ...piece, bytes: new Uint8Array(256 * 1024 + 1) }
  expect(await early!.put(whole)).toMatchObject({ status: 413, body: { refusal: 'too-large' } })
  const html = Buffer.from('<!doctype html><script>1</script>')
  const page = saidOf(html, batches[0]!.batchId, { takenAt: new Date().toISOString() })
  await early!.say(page)
  await early!.put(pieceToSend(html, page.id, 0))
  expect(await early!.say(page)).toMatchObject({ status: 422, body: { refusal: 'photo-not-a-picture' } })
  const kept = await app.look.query('SELECT 1 FROM photo WHERE bakery_id = $1', [bakery.bakeryId])
  expect(kept.rows).toEqual([])
})
