import { createHash } from 'node:crypto'
import fc from 'fast-check'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { photoPieceBytes, pieceOfPhoto } from '@/lib/kitchen/photos/photo-limits.input'
import { sendInPieces, type PhotoSent } from '@/lib/station/photo/send-in-pieces'

const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')
const bytes = new Uint8Array(photoPieceBytes * 2 + 100).map((_, at) => at % 251)
const photo = {
  id: '01890000-0000-7000-8000-000000000000',
  batchId: '01890000-0000-7000-8000-000000000001',
  piece: null,
  takenAt: '2026-03-02T04:00:00.000Z',
  bytes: bytes.length,
  hash: sha256(bytes),
}

type Fate = 'through' | 'cut' | 'answer lost' | 'fails' | 'not the book'

/** The book's side, and a network whose fates are given; beyond them everything gets through. */
function book(fates: Fate[]) {
  const there = new Map<number, Uint8Array>()
  let kept = 0
  const puts: number[] = []
  const headers: Record<string, string>[] = []
  const answer = (address: string, body: string | Uint8Array) => {
    if (typeof body === 'string') {
      const pieces = [0, 1, 2].filter((number) => !there.has(number))
      if (pieces.length > 0) return { outcome: 'lacks', id: photo.id, pieces }
      if (kept === 0) kept += 1
      const whole = Buffer.concat([0, 1, 2].map((number) => there.get(number) ?? new Uint8Array()))
      return { outcome: 'kept', id: photo.id, sentHash: sha256(whole), hash: 'x' }
    }
    const number = Number(address.split('/').at(-1))
    puts.push(number)
    there.set(number, body)
    return { number, hash: sha256(body) }
  }
  vi.stubGlobal('fetch', (address: string, q: { body: string | Uint8Array; headers: Record<string, string> }) => {
    headers.push(q.headers)
    const fate = fates.shift() ?? 'through'
    if (fate === 'cut') return Promise.reject(new TypeError('no network'))
    if (fate === 'not the book') return Promise.resolve(new Response('<h1>Welcome</h1>'))
    if (fate === 'fails') return Promise.resolve(Response.json({ refusal: 'away' }, { status: 503 }))
    const said = answer(address, q.body)
    return fate === 'answer lost' ? Promise.reject(new TypeError('no network')) : Promise.resolve(Response.json(said))
  })
  return { there, puts, headers, count: () => kept }
}

const send = (more: Partial<Parameters<typeof sendInPieces>[0]> = {}): Promise<PhotoSent> =>
  sendInPieces({ photo, pieceOf: (number) => Promise.resolve(pieceOfPhoto(bytes, number)), token: 'token', ...more })

afterEach(() => vi.unstubAllGlobals())

describe('a photo on its way', () => {
  it('goes piece by piece under the token of whoever took it, and is told of', async () => {
    const { puts, headers, count } = book([])
    const told: number[][] = []
    expect(await send({ onPiece: (done, of) => told.push([done, of]) })).toEqual({ outcome: 'kept' })
    expect(puts).toEqual([0, 1, 2])
    expect(told).toEqual([0, 1, 2].map((done) => [done, 3]))
    expect(headers.every((each) => each['Evendough-Shift'] === 'token')).toBe(true)
    expect(count()).toBe(1)
  })

  it('arrives whole and once, whatever the network does, and is never taken for kept before', async () => {
    const fate = fc.constantFrom<Fate>('through', 'cut', 'answer lost', 'fails', 'not the book')
    await fc.assert(
      fc.asyncProperty(fc.array(fate, { maxLength: 12 }), async (fates) => {
        const { there, count, puts } = book([...fates])
        let sent = await send()
        for (let tries = 0; sent.outcome !== 'kept' && tries < 20; tries++) {
          expect(sent.outcome).toBe('again')
          sent = await send()
        }
        expect(sent).toEqual({ outcome: 'kept' })
        expect(sha256(Buffer.concat([0, 1, 2].map((number) => there.get(number)!)))).toBe(photo.hash)
        expect(count()).toBe(1)
        // What arrived is not sent again.
        expect(new Set(puts).size).toBe(puts.length)
      }),
      { seed: 92 },
    )
  })

  it('stops before a piece where something else is to go first, and goes on from there', async () => {
    const { puts } = book([])
    let asked = 0
    expect(await send({ isToStop: () => (asked += 1) > 2 })).toMatchObject({ outcome: 'stopped' })
    expect(puts).toEqual([0, 1])
    expect(await send()).toEqual({ outcome: 'kept' })
    expect(puts).toEqual([0, 1, 2])
  })

  it.each([
    [{ refusal: 'photo-heic', words: 'No.' }, 422, { outcome: 'refused', refusal: 'photo-heic', words: 'No.' }],
    [{ refusal: 'too-large' }, 413, { outcome: 'refused', refusal: 'too-large', words: null }],
    [{ refusal: 'not-signed-in', words: 'Out.' }, 401, { outcome: 'who', words: 'Out.' }],
    [{ refusal: 'too-many-photos', words: 'Many.' }, 429, { outcome: 'again', words: 'Many.' }],
    [{ refusal: 'photos-busy', words: 'Busy.' }, 503, { outcome: 'again', words: 'Busy.' }],
    [{}, 404, { outcome: 'again', words: null }],
    [{ outcome: 'kept', sentHash: 'another' }, 200, { outcome: 'again', words: null }],
    [{ outcome: 'lacks', pieces: 'all' }, 200, { outcome: 'again', words: null }],
  ])('is judged by an answer of %j with %i', async (body, status, sent) => {
    vi.stubGlobal('fetch', () => Promise.resolve(Response.json(body, { status })))
    expect(await send()).toEqual(sent)
  })

  it.each(['not-found', 'photo-cut-off'])('of which a piece is refused as %s is said once more', async (refusal) => {
    vi.stubGlobal('fetch', (_: string, { method }: { method: string }) =>
      Promise.resolve(
        method === 'POST'
          ? Response.json({ outcome: 'lacks', pieces: [1] })
          : Response.json({ refusal }, { status: 422 }),
      ),
    )
    expect(await send()).toEqual({ outcome: 'again', words: null })
  })

  it('that is not on the tablet any more needs somebody', async () => {
    book([])
    expect(await send({ pieceOf: () => Promise.resolve(undefined) })).toMatchObject({ outcome: 'refused' })
  })
})
