import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { changePerson } from '@/lib/kitchen/people/change-person'
import { enrolStation } from '@/lib/kitchen/stations/enrol-station'
import { getStation } from '@/lib/kitchen/stations/get-station'
import { listStations } from '@/lib/kitchen/stations/list-stations'
import { makeStation } from '@/lib/kitchen/stations/make-station'
import { noteTold } from '@/lib/kitchen/stations/note-told'
import { withdrawStation } from '@/lib/kitchen/stations/withdraw-station'
import { callerOf, makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import { atStation, enrolledStation } from '../../support/stations'

let database: FreshDatabase
let bakery: TestBakery
beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery()
})
afterAll(() => database.drop())

const minutes = (count: number) => new Date(testNow.getTime() + count * 60_000)
const drawUp = async (name: string, by = bakery.owner) => valueOf(await makeStation.call(by.caller, { name }))
const enrol = (code: string, now = testNow) => enrolStation.call(callerOf(null, now), { code })
const dead = 'invalid code:station-code-dead'

describe('a code', () => {
  it('enrols one tablet, once, however it is typed', async () => {
    const { code } = await drawUp('Bench')
    expect(code).toMatch(/^[2-9A-HJKMNP-TV-Z]{4}-[2-9A-HJKMNP-TV-Z]{4}$/)
    const { secret, name, bakery: whose } = valueOf(await enrol(` ${code.toLowerCase().replace('-', ' ')} `))
    expect([name, whose]).toEqual(['Bench', 'Mill Row'])
    expect(valueOf(await getStation.call(atStation({ secret }, null), {})).station.name).toBe('Bench')
    expect(refusalOf(await enrol(code))).toBe(dead)
  })

  it('that two tablets send at the same moment enrols one of them', async () => {
    const { code } = await drawUp('Twice')
    const tried = await Promise.all(Array.from({ length: 6 }, () => enrol(code)))
    expect(tried.filter(({ ok }) => ok)).toHaveLength(1)
    const pointers = await db().signInPointer.findMany({ where: { kind: 'station' } })
    expect(new Set(pointers.map(({ targetId }) => targetId)).size).toBe(pointers.length)
  })

  it('is dead after a quarter of an hour, and its name is free again', async () => {
    const { code } = await drawUp('Late')
    expect(refusalOf(await makeStation.call(bakery.owner.caller, { name: 'late' }))).toBe(
      'invalid name:station-name-taken',
    )
    expect(refusalOf(await enrol(code, minutes(15)))).toBe(dead)
    const owner = callerOf(bakery.owner.sessionSecret, minutes(16))
    const again = valueOf(await makeStation.call(owner, { name: 'late' }))
    expect(refusalOf(await enrol(code, minutes(16)))).toBe(dead)
    expect((await enrol(again.code, minutes(17))).ok).toBe(true)
  })

  it('of somebody who may no longer give one is dead', async () => {
    const other = await makeBakery('Other Row')
    const { code } = valueOf(await makeStation.call(other.head.caller, { name: 'Bench' }))
    const demoted = { personId: other.head.personId, name: 'Henk', role: 'shift_baker', works: true, seenRevision: 1 }
    valueOf(await changePerson.call(other.owner.caller, demoted))
    expect(refusalOf(await enrol(code))).toBe(dead)
  })

  it('is guessed slowly', async () => {
    const from = (now: Date) => ({ ...callerOf(null, now), address: '203.0.113.7' })
    const guesses = await Promise.all(
      Array.from({ length: 60 }, () => enrolStation.call(from(testNow), { code: 'AAAA-AAAA' })),
    )
    const judged = guesses.filter((guess) => refusalOf(guess) === dead).length
    expect(judged).toBe(10)
    const { code } = await drawUp('Guessed')
    expect(refusalOf(await enrolStation.call(from(testNow), { code }))).toBe('too-many-codes')
    expect((await enrolStation.call(from(minutes(14)), { code })).ok).toBe(true)
  })

  it.each(['', '          ', 'ABCD', 'ABCD-EFGHJ', 'ABCD-EFG0', 'x'.repeat(41), '<b>', '\u0000'])(
    'that is none is said so: %j',
    async (code) => {
      expect(refusalOf(await enrol(code))).toMatch(/^invalid code:/)
    },
  )
})

describe('a tablet that is withdrawn', () => {
  it('is nobody from then on, and never comes back', async () => {
    const station = await enrolledStation(bakery, 'Gone')
    valueOf(await withdrawStation.call(bakery.head.caller, { stationId: station.stationId }))
    expect(refusalOf(await getStation.call(atStation(station, null), {}))).toBe('not-signed-in')
    expect(refusalOf(await withdrawStation.call(bakery.head.caller, { stationId: station.stationId }))).toBe(
      'stale-moved-on',
    )
    const id = { bakeryId_id: { bakeryId: bakery.bakeryId, id: station.stationId } }
    const back = (data: { withdrawnAt?: null; withdrawnById?: null; enrolledAt?: null }) =>
      db().station.update({ where: id, data })
    await expect(back({ withdrawnAt: null, withdrawnById: null })).rejects.toThrow('EV004')
    await expect(back({ enrolledAt: null })).rejects.toThrow('EV004')
  })

  it('before its code was typed has no code any more', async () => {
    const { stationId, code } = await drawUp('Never')
    valueOf(await withdrawStation.call(bakery.owner.caller, { stationId }))
    expect(refusalOf(await enrol(code))).toBe(dead)
  })

  it('of a neighbour is not there', async () => {
    const other = await makeBakery('Across the street')
    const station = await enrolledStation(other, 'Theirs')
    expect(refusalOf(await withdrawStation.call(bakery.owner.caller, { stationId: station.stationId }))).toBe(
      'not-found',
    )
    const { stations } = valueOf(await listStations.call(bakery.owner.caller, { after: null }))
    expect(stations.rows.map(({ name }) => name)).not.toContain('Theirs')
  })
})

it('what the head baker did with a tablet is told to the owner until the owner says so, and what the owner did is not', async () => {
  const place = await makeBakery('Two heads')
  const news = async () =>
    valueOf(await listStations.call(place.owner.caller, { after: null }))
      .stations.rows.filter(({ isNews }) => isNews)
      .map(({ name }) => name)
  const mine = await enrolledStation(place, 'Mine')
  const { stationId } = valueOf(await makeStation.call(place.head.caller, { name: 'Theirs' }))
  expect(await news()).toEqual(['Theirs'])
  expect(refusalOf(await noteTold.call(place.head.caller, { stationId }))).toBe('not-allowed')
  valueOf(await noteTold.call(place.owner.caller, { stationId }))
  expect(await news()).toEqual([])
  valueOf(await withdrawStation.call(place.head.caller, { stationId: mine.stationId }))
  expect(await news()).toEqual(['Mine'])
  const heads = valueOf(await listStations.call(place.head.caller, { after: null })).stations.rows
  expect(heads.some(({ isNews }) => isNews)).toBe(false)
})

it('no code, secret or token lies in the database as it is', async () => {
  const { code } = await drawUp('Secret')
  const { secret } = valueOf(await enrol(code))
  const [row] = await db().$queryRaw<{ all: string }[]>`
    SELECT string_agg(t::text, ' ') AS all FROM (
       SELECT to_jsonb(s) AS t FROM station s UNION ALL SELECT to_jsonb(p) FROM sign_in_pointer p
       UNION ALL SELECT to_jsonb(a) FROM audit_entry a UNION ALL SELECT to_jsonb(f) FROM answered_form f) AS everything`
  for (const each of [secret, code, code.replace('-', '')]) expect(row?.all).not.toContain(each)
})
