import fc from 'fast-check'
import { v7 as uuid } from 'uuid'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { db } from '@/lib/db/client'
import { clearRunOut } from '@/lib/kitchen/jobs/clear-run-out'
import { getPhoto } from '@/lib/kitchen/photos/get-photo'
import { listPhotos } from '@/lib/kitchen/photos/list-photos'
import { lookAtHeader } from '@/lib/kitchen/photos/look-at-header'
import { photoLimits } from '@/lib/kitchen/photos/must-have-room'
import { sendPhoto } from '@/lib/kitchen/photos/send-photo'
import { sendPhotoPiece } from '@/lib/kitchen/photos/send-photo-piece'
import { makeApprovedTrial, type ApprovedTrial } from '../../support/approved-trial'
import { makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'
import { fromCamera, noise } from '../../support/made-pictures'
import { pieceToSend, saidOf, sendWhole, sha256 } from '../../support/send-photo'
import { atStation, enrolledStation, givePin, tokenAt } from '../../support/stations'

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery
let trial: ApprovedTrial
/** One piece. */
let photo: Buffer
/** Three pieces. */
let large: Buffer

beforeAll(async () => {
  database = await freshDatabase()
  neighbour = await makeBakery('Next Door')
  photo = await fromCamera()
  large = await noise(480, 480).png().toBuffer()
  expect(Math.ceil(large.length / 262_144)).toBe(3)
})
beforeEach(async () => {
  bakery = await makeBakery('Mill Row')
  trial = await makeApprovedTrial(bakery)
})
afterEach(() => vi.unstubAllEnvs())
afterAll(() => database.drop())

const dough = (at = 0) => trial.batches[at]!.batchId
const say = (said: object, who = bakery.early) => sendPhoto.call(who.caller, said)
const put = (piece: object, who = bakery.early) => sendPhotoPiece.call(who.caller, piece)
const counts = async () => ({
  photos: await db().photo.count({ where: { bakeryId: bakery.bakeryId } }),
  pieces: await db().photoPiece.count({ where: { bakeryId: bakery.bakeryId } }),
  coming: await db().comingPhoto.count({ where: { bakeryId: bakery.bakeryId } }),
  comingPieces: await db().comingPhotoPiece.count({ where: { bakeryId: bakery.bakeryId } }),
})
const nothing = { photos: 0, pieces: 0, coming: 0, comingPieces: 0 }
const lastEntry = () =>
  db().auditEntry.findFirstOrThrow({ where: { bakeryId: bakery.bakeryId }, orderBy: { number: 'desc' } })

describe('a photo', () => {
  it('comes in pieces, is in the book as a JPEG of ours, and everybody of the bakery sees it', async () => {
    const said = saidOf(large, dough(), { piece: 2 })
    expect(valueOf(await say(said))).toEqual({ outcome: 'lacks', id: said.id, pieces: [0, 1, 2] })
    for (const number of [2, 0]) {
      const piece = pieceToSend(large, said.id, number)
      expect(valueOf(await put(piece))).toEqual({ number, hash: piece.hash })
    }
    expect(valueOf(await say(said))).toEqual({ outcome: 'lacks', id: said.id, pieces: [1] })
    valueOf(await put(pieceToSend(large, said.id, 1)))
    const kept = valueOf(await say(said))
    expect(kept).toMatchObject({ outcome: 'kept', id: said.id, sentHash: sha256(large), isAgain: false })
    expect(await counts()).toMatchObject({ photos: 1, coming: 0, comingPieces: 0 })

    const { photos } = valueOf(await listPhotos.call(bakery.late.caller, { batchId: dough() }))
    expect(photos).toMatchObject([{ id: said.id, piece: 2, who: 'Esi', takenAt: testNow, width: 480, height: 480 }])
    const whole = valueOf(await getPhoto.call(bakery.late.caller, { photoId: said.id, isSmall: false }))
    expect(kept).toMatchObject({ hash: sha256(whole.bytes) })
    expect(lookAtHeader(whole.bytes)).toEqual({ kind: 'jpeg', width: 480, height: 480 })
    const small = valueOf(await getPhoto.call(bakery.late.caller, { photoId: said.id, isSmall: true }))
    expect(lookAtHeader(small.bytes)).toEqual({ kind: 'jpeg', width: 320, height: 320 })
  })

  it('stands in the record by the hashes of what was sent and of what is kept, and by nothing of the picture', async () => {
    const said = saidOf(photo, dough())
    const kept = await sendWhole(bakery.early.caller, photo, said)
    if (kept.outcome !== 'kept') throw new Error(kept.outcome)
    expect(JSON.parse((await lastEntry()).entryText)).toMatchObject({
      action: 'photos.send-photo',
      target: dough(),
      after: { photo: said.id, batch: trial.batches[0]!.code, piece: null, sent: sha256(photo), hash: kept.hash },
    })
  })

  it('is kept once however often anything of it is sent, and answered the same', async () => {
    const said = saidOf(large, dough())
    const first = await sendWhole(bakery.early.caller, large, said)
    const number = (await lastEntry()).number
    const before = await counts()
    expect(await sendWhole(bakery.early.caller, large, said)).toEqual({ ...first, isAgain: true })
    expect(refusalOf(await put(pieceToSend(large, said.id, 0)))).toBe('not-found')
    expect(await counts()).toEqual(before)
    expect((await lastEntry()).number).toBe(number)
  })

  it('of which everything is sent five times at one moment is kept once', async () => {
    const said = saidOf(large, dough())
    valueOf(await say(said))
    const five = [1, 2, 3, 4, 5]
    await Promise.all(
      five.flatMap(() => [0, 1, 2].map(async (n) => valueOf(await put(pieceToSend(large, said.id, n))))),
    )
    const answers = (await Promise.all(five.map(() => say(said)))).map(valueOf)
    expect(answers.map(({ outcome }) => outcome)).toEqual(Array(5).fill('kept'))
    expect(answers.filter((answer) => answer.outcome === 'kept' && !answer.isAgain)).toHaveLength(1)
    expect(await counts()).toMatchObject({ photos: 1, coming: 0 })
  })

  it('comes whole in whatever order and however often its pieces come', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.integer({ min: 0, max: 2 }), { maxLength: 6 }), async (order) => {
        const said = saidOf(large, dough())
        valueOf(await say(said))
        for (const number of order) valueOf(await put(pieceToSend(large, said.id, number)))
        const lacking = [0, 1, 2].filter((number) => !order.includes(number))
        const answer = valueOf(await say(said))
        if (lacking.length > 0) expect(answer).toEqual({ outcome: 'lacks', id: said.id, pieces: lacking })
        for (const number of lacking) valueOf(await put(pieceToSend(large, said.id, number)))
        expect(valueOf(await say(said))).toMatchObject({ outcome: 'kept', sentHash: said.hash })
      }),
      { seed: 81, numRuns: 8 },
    )
  })

  it('stays as it was kept, whoever asks', async () => {
    await sendWhole(bakery.early.caller, photo, saidOf(photo, dough()))
    for (const statement of [
      'UPDATE photo SET piece = 1',
      'DELETE FROM photo_piece',
      `UPDATE photo_piece SET bytes = '\\x00'`,
    ])
      await expect(connected(database.ownerUrl, (client) => client.query(statement))).rejects.toMatchObject({
        code: 'EV001',
      })
  })

  it('that was changed past every trigger is not shown as what was kept', async () => {
    const said = saidOf(photo, dough())
    await sendWhole(bakery.early.caller, photo, said)
    await connected(database.superUrl, async (client) => {
      await client.query(`SET session_replication_role = replica`)
      await client.query(`UPDATE photo_piece SET bytes = '\\x00' WHERE photo_id = $1`, [said.id])
    })
    await expect(getPhoto.call(bakery.late.caller, { photoId: said.id, isSmall: false })).rejects.toThrow(
      'is not what was kept',
    )
  })

  it('is kept of a trial that has ended, because it moves nothing', async () => {
    await db().trial.updateMany({ where: { bakeryId: bakery.bakeryId }, data: { state: 'stopped' } })
    expect(await sendWhole(bakery.early.caller, photo, saidOf(photo, dough()))).toMatchObject({ outcome: 'kept' })
  })
})

describe('a photo from a tablet', () => {
  it('names the tablet, and is of whoever was on it', async () => {
    const station = await enrolledStation(bakery)
    await givePin(bakery.late)
    const caller = atStation(station, await tokenAt(station, bakery.late))
    const said = saidOf(photo, dough())
    await sendWhole(caller, photo, said)
    const row = await db().photo.findFirstOrThrow({ where: { bakeryId: bakery.bakeryId, id: said.id } })
    expect(row).toMatchObject({ stationId: station.stationId, personId: bakery.late.personId })
    expect(valueOf(await listPhotos.call(caller, { batchId: dough() })).photos).toHaveLength(1)
  })
})

describe('what is refused leaves nothing', () => {
  it.each([
    ['a page', Buffer.from('<!doctype html><script>1</script>'), 'photo-not-a-picture'],
    ['a HEIC', Buffer.from('\0\0\0\u0018ftypheic\0\0\0\0mif1heic', 'latin1'), 'photo-heic'],
    ['a JPEG that was cut off', null, 'photo-cut-off'],
  ])('%s, and it is refused each time', async (_, made, refusal) => {
    const sent = made ?? photo.subarray(0, photo.length - 2)
    const said = saidOf(sent, dough())
    const entries = await db().auditEntry.count()
    for (const _again of [1, 2])
      expect(await sendWhole(bakery.early.caller, sent, said)).toEqual({ outcome: 'refused', id: said.id, refusal })
    expect(await counts()).toEqual(nothing)
    expect(await db().auditEntry.count()).toBe(entries)
  })

  it('what is not of the length or hash that was said', async () => {
    const said = saidOf(photo, dough(), { hash: 'a'.repeat(64) })
    expect(await sendWhole(bakery.early.caller, photo, said)).toMatchObject({ refusal: 'photo-cut-off' })
    const short = saidOf(photo, dough())
    valueOf(await say(short))
    const piece = pieceToSend(photo, short.id, 0)
    const cut = piece.bytes.subarray(0, 100)
    for (const odd of [{ bytes: cut }, { bytes: cut, hash: sha256(cut) }, { hash: 'b'.repeat(64) }])
      expect(refusalOf(await put({ ...piece, ...odd }))).toBe('photo-cut-off')
    expect(await counts()).toEqual({ ...nothing, coming: 1 })
  })

  it('more than 8 MB, before anything of it is sent', async () => {
    expect(refusalOf(await say(saidOf(photo, dough(), { bytes: 8 * 1024 * 1024 + 1 })))).toBe('photo-too-large')
    expect(await counts()).toEqual(nothing)
  })

  it.each([
    ['no bytes', { bytes: 0 }, 'invalid bytes:too-small'],
    ['part of a byte', { bytes: 1.5 }, 'invalid bytes:not-whole'],
    ['no hash', { hash: 'none' }, 'invalid hash:wrong-form'],
    ['a piece that no dough has', { piece: 5 }, 'invalid piece:too-big'],
    ['piece 0', { piece: 0 }, 'invalid piece:too-small'],
    ['a time that is none', { takenAt: 'soon' }, 'invalid takenAt:wrong-form'],
    ['an id that anybody could guess', { id: 'a' }, 'invalid id:wrong-form'],
  ])('%s', async (_, more, refusal) => {
    expect(refusalOf(await say(saidOf(photo, dough(), more)))).toBe(refusal)
    expect(await counts()).toEqual(nothing)
  })

  it('another photo under the same number: on its way, or in the book', async () => {
    const said = saidOf(large, dough())
    valueOf(await say(said))
    const others = [{ hash: 'c'.repeat(64) }, { bytes: 7 }, { piece: 1 }, { batchId: dough(1) }]
    for (const other of others) expect(refusalOf(await say({ ...said, ...other }))).toBe('photo-clash')
    valueOf(await put(pieceToSend(large, said.id, 0)))
    const other = Buffer.from(large)
    other[9] = other[9]! ^ 1
    expect(refusalOf(await put(pieceToSend(other, said.id, 0)))).toBe('photo-clash')
    expect(await sendWhole(bakery.early.caller, large, said)).toMatchObject({ outcome: 'kept' })
    for (const each of others) expect(refusalOf(await say({ ...said, ...each }))).toBe('photo-clash')
    expect(refusalOf(await say(said, bakery.late))).toBe('photo-clash')
  })

  it('a piece of what nobody said, of what somebody else said, or beyond its end', async () => {
    const said = saidOf(photo, dough())
    const piece = pieceToSend(photo, said.id, 0)
    expect(refusalOf(await put(piece))).toBe('not-found')
    valueOf(await say(said))
    expect(refusalOf(await put(piece, bakery.late))).toBe('not-found')
    expect(refusalOf(await put(piece, neighbour.early))).toBe('not-found')
    expect(refusalOf(await put({ ...piece, number: 1 }))).toBe('not-found')
  })
})

describe('a bakery next door', () => {
  it('finds neither dough nor photo, as where there is none', async () => {
    const said = saidOf(photo, dough())
    await sendWhole(bakery.early.caller, photo, said)
    for (const batchId of [dough(), uuid()])
      expect(refusalOf(await say(saidOf(photo, batchId), neighbour.owner))).toBe('not-found')
    for (const photoId of [said.id, uuid()])
      expect(refusalOf(await getPhoto.call(neighbour.owner.caller, { photoId, isSmall: true }))).toBe('not-found')
    expect(valueOf(await listPhotos.call(neighbour.owner.caller, { batchId: dough() })).photos).toEqual([])
  })

  it('may use the same number for a photo of its own', async () => {
    const said = saidOf(photo, dough())
    await sendWhole(bakery.early.caller, photo, said)
    const theirs = await makeApprovedTrial(neighbour)
    const same = saidOf(photo, theirs.batches[0]!.batchId, { id: said.id })
    expect(await sendWhole(neighbour.early.caller, photo, same)).toMatchObject({ outcome: 'kept', isAgain: false })
  })
})

describe('there is an end of photos', () => {
  it('that one person has under way, whoever else sends', async () => {
    for (let at = 0; at < photoLimits.onTheWay; at++) valueOf(await say(saidOf(photo, dough())))
    const further = saidOf(photo, dough())
    expect(refusalOf(await say(further))).toBe('too-many-photos')
    expect(await sendWhole(bakery.late.caller, photo, saidOf(photo, dough()))).toMatchObject({ outcome: 'kept' })
    await db().comingPhoto.deleteMany({ where: { bakeryId: bakery.bakeryId } })
    expect(await sendWhole(bakery.early.caller, photo, further)).toMatchObject({ outcome: 'kept' })
  })

  const rows = (count: number, receivedAt: Date, batchId: string) =>
    db().photo.createMany({
      data: Array.from({ length: count }, () => ({
        bakeryId: bakery.bakeryId,
        id: uuid(),
        trialId: trial.trialId,
        batchId,
        personId: bakery.early.personId,
        takenAt: receivedAt,
        receivedAt,
        sentBytes: 1,
        sentHash: 'd'.repeat(64),
        mediaType: 'image/jpeg',
        bytes: 1024 * 1024,
        width: 1,
        height: 1,
        hash: 'e'.repeat(64),
        small: new Uint8Array([1]),
      })),
    })
  const before = (ms: number) => new Date(testNow.getTime() - ms)

  it('that come from one person within an hour', async () => {
    await rows(photoLimits.anHour / 2, before(3_599_000), dough(0))
    await rows(photoLimits.anHour / 2, before(3_599_000), dough(1))
    const said = saidOf(photo, dough())
    expect(refusalOf(await say(said))).toBe('too-many-photos')
    expect(valueOf(await say(said, bakery.late))).toMatchObject({ outcome: 'lacks' })
  })

  it('of one dough', async () => {
    await rows(photoLimits.ofOneDough, before(7_200_000), dough())
    expect(refusalOf(await say(saidOf(photo, dough())))).toBe('dough-full-of-photos')
    expect(valueOf(await say(saidOf(photo, dough(1))))).toMatchObject({ outcome: 'lacks' })
  })

  it('in a book, by what its install has room for', async () => {
    vi.stubEnv('EVENDOUGH_PHOTOS_GB', '0.01')
    await rows(11, before(7_200_000), dough())
    expect(refusalOf(await say(saidOf(photo, dough(1))))).toBe('no-room-for-photos')
    vi.stubEnv('EVENDOUGH_PHOTOS_GB', '0.02')
    expect(valueOf(await say(saidOf(photo, dough(1))))).toMatchObject({ outcome: 'lacks' })
  })
})

it('what did not come within a day is cleared away, and begins anew', async () => {
  const said = saidOf(large, dough())
  valueOf(await say(said))
  valueOf(await put(pieceToSend(large, said.id, 0)))
  const clear = (ms: number) =>
    clearRunOut.run({ now: new Date(testNow.getTime() + ms), signal: new AbortController().signal })
  const dayMs = 24 * 60 * 60_000
  await clear(dayMs)
  expect(await counts()).toMatchObject({ coming: 1, comingPieces: 1 })
  await clear(dayMs + 1)
  expect(await counts()).toEqual(nothing)
  expect(await sendWhole(bakery.early.caller, large, said)).toMatchObject({ outcome: 'kept' })
})
