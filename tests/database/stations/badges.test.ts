import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { findActor } from '@/lib/auth/find-actor'
import { db } from '@/lib/db/client'
import { changePerson } from '@/lib/kitchen/people/change-person'
import { choosePin } from '@/lib/kitchen/people/choose-pin'
import { getAccount } from '@/lib/kitchen/people/get-account'
import { getPerson } from '@/lib/kitchen/people/get-person'
import { makeBadge } from '@/lib/kitchen/people/make-badge'
import { makeOwnBadge } from '@/lib/kitchen/people/make-own-badge'
import { takePinAway } from '@/lib/kitchen/people/take-pin-away'
import { withdrawBadge } from '@/lib/kitchen/people/withdraw-badge'
import { withdrawOwnBadge } from '@/lib/kitchen/people/withdraw-own-badge'
import { getStation } from '@/lib/kitchen/stations/get-station'
import { goOn } from '@/lib/kitchen/stations/go-on'
import { showBadge } from '@/lib/kitchen/stations/show-badge'
import { withdrawStation } from '@/lib/kitchen/stations/withdraw-station'
import { callerOf, makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import { atStation, badgeOf, enrolledStation, givePin, tokenAt, type TestStation } from '../../support/stations'

let database: FreshDatabase
let bakery: TestBakery
let station: TestStation
beforeAll(async () => {
  database = await freshDatabase()
})
beforeEach(async () => {
  bakery = await makeBakery()
  station = await enrolledStation(bakery)
  await givePin(bakery.early)
})
afterAll(() => database.drop())

const minutes = (count: number) => new Date(testNow.getTime() + count * 60_000)
const show = (badge: string, at = station, now = testNow) => showBadge.call(atStation(at, null, now), { badge })
const onIt = async (token: string, now = testNow) =>
  valueOf(await getStation.call(atStation(station, token, now), {})).onShift?.name ?? null
const actionsOf = async () =>
  (await db().auditEntry.findMany({ where: { bakeryId: bakery.bakeryId }, orderBy: { number: 'asc' } })).map(
    ({ action }) => action,
  )

describe('a badge', () => {
  it('logs its holder on, for as long as a PIN does, and says so in the record', async () => {
    const given = valueOf(await show(await badgeOf(bakery.early)))
    expect(given).toMatchObject({ person: { name: 'Esi' }, endsAt: minutes(240).toISOString() })
    expect(await onIt(given.shiftToken)).toBe('Esi')
    valueOf(await goOn.call(atStation(station, null, minutes(200)), { shiftToken: given.shiftToken }))
    expect(await onIt(given.shiftToken, minutes(201))).toBe('Esi')
    expect(await onIt(given.shiftToken, minutes(240))).toBeNull()
    expect((await actionsOf()).slice(-2)).toEqual(['people.make-own-badge', 'stations.show-badge'])
  })

  it('is no PIN: the shift that it begins has none, also where a PIN was given before', async () => {
    const badge = await badgeOf(bakery.early)
    await tokenAt(station, bakery.early)
    const { shiftToken } = valueOf(await show(badge))
    expect(await findActor(db(), atStation(station, shiftToken), testNow)).toMatchObject({ pinGivenAt: null })
    const typed = await tokenAt(station, bakery.early)
    expect(await findActor(db(), atStation(station, typed), testNow)).toMatchObject({ pinGivenAt: testNow })
    expect(await onIt(shiftToken)).toBeNull()
  })

  it('is a number of 128 bits that is kept as a hash, and told to nobody but whoever makes it', async () => {
    const badge = await badgeOf(bakery.early)
    expect(badge).toMatch(/^EVENDOUGH\d{39}$/)
    expect(BigInt(badge.slice(9)) < 2n ** 128n).toBe(true)
    expect(await badgeOf(bakery.early)).not.toBe(badge)
    await show(badge)
    const answers = JSON.stringify([
      await getAccount.call(bakery.early.caller, {}),
      await getPerson.call(bakery.head.caller, { personId: bakery.early.personId }),
      await getStation.call(atStation(station, null), {}),
    ])
    const [row] = await db().$queryRaw<{ all: string }[]>`
      SELECT string_agg(t::text, ' ') AS all FROM (SELECT to_jsonb(a) AS t FROM audit_entry a
         UNION ALL SELECT to_jsonb(f) FROM answered_form f UNION ALL SELECT to_jsonb(b) FROM badge b
         UNION ALL SELECT to_jsonb(s) FROM station_shift s) AS everything`
    for (const text of [answers, row?.all]) expect(text).not.toContain(badge.slice(9))
    const { hash } = await db().badge.findFirstOrThrow({ where: { personId: bakery.early.personId } })
    expect(hash).toMatch(/^[0-9a-f]{64}$/)
    expect(answers).not.toContain(hash)
  })

  it('is read with blanks around it and in small letters, as a scanner may type it', async () => {
    const badge = await badgeOf(bakery.early)
    expect(valueOf(await show(` ${badge.toLowerCase()}\r\n`)).person.name).toBe('Esi')
  })

  it('that gave way to a new one, or was withdrawn, leads in no more, and whoever came in by it is off', async () => {
    const first = await badgeOf(bakery.early)
    const byFirst = valueOf(await show(first)).shiftToken
    const second = await badgeOf(bakery.early)
    expect(await onIt(byFirst)).toBeNull()
    expect(refusalOf(await goOn.call(atStation(station, null), { shiftToken: byFirst }))).toBe('pin-again')
    expect(refusalOf(await show(first))).toBe('wrong-badge')
    const bySecond = valueOf(await show(second)).shiftToken
    const oven = await enrolledStation(bakery, 'Oven')
    const typed = await tokenAt(oven, bakery.early)
    valueOf(await withdrawBadge.call(bakery.head.caller, { personId: bakery.early.personId }))
    expect(await onIt(bySecond)).toBeNull()
    expect(refusalOf(await show(second))).toBe('wrong-badge')
    // Who typed their PIN has nothing to do with it.
    expect(valueOf(await getStation.call(atStation(oven, typed), {})).onShift?.name).toBe('Esi')
    valueOf(await withdrawOwnBadge.call(bakery.early.caller, {}))
    expect((await actionsOf()).filter((action) => action.startsWith('people.withdraw'))).toEqual([
      'people.withdraw-badge',
    ])
  })

  it('is of no use at another bakery’s tablet, at a withdrawn one, and without any', async () => {
    const badge = await badgeOf(bakery.early)
    const nextDoor = await makeBakery('Next door')
    expect(refusalOf(await show(badge, await enrolledStation(nextDoor)))).toBe('wrong-badge')
    expect(refusalOf(await showBadge.call(callerOf(null), { badge }))).toBe('not-signed-in')
    expect(refusalOf(await showBadge.call(bakery.early.caller, { badge }))).toBe('not-allowed')
    valueOf(await withdrawStation.call(bakery.owner.caller, { stationId: station.stationId }))
    expect(refusalOf(await show(badge))).toBe('not-signed-in')
  })

  it('ends with the person who is switched off or gets another role, and with their PIN, and does not come back', async () => {
    const { early, late, owner, head } = bakery
    await givePin(late)
    const [ofEarly, ofLate] = [await badgeOf(early), await badgeOf(late)]
    const change = { personId: early.personId, name: 'Esi', role: 'shift_baker', seenRevision: 1 }
    valueOf(await changePerson.call(owner.caller, { ...change, works: false }))
    expect(refusalOf(await show(ofEarly))).toBe('wrong-badge')
    valueOf(await changePerson.call(owner.caller, { ...change, works: true, seenRevision: 2 }))
    expect(refusalOf(await show(ofEarly))).toBe('wrong-badge')
    valueOf(await takePinAway.call(head.caller, { personId: late.personId }))
    expect(refusalOf(await show(ofLate))).toBe('wrong-badge')
    await givePin(late, '730418')
    expect(refusalOf(await show(ofLate))).toBe('wrong-badge')
    const promoted = await badgeOf(late)
    valueOf(
      await changePerson.call(owner.caller, { ...change, personId: late.personId, role: 'head_baker', works: true }),
    )
    expect(refusalOf(await show(promoted))).toBe('wrong-badge')
  })

  it('stays with a new PIN of its holder, though whoever is on a tablet is logged off', async () => {
    const badge = await badgeOf(bakery.early)
    const { shiftToken } = valueOf(await show(badge))
    const { sessionSecret, password } = bakery.early
    valueOf(await choosePin.call(callerOf(sessionSecret, testNow, password), { pin: '730418' }))
    expect(await onIt(shiftToken)).toBeNull()
    expect(valueOf(await show(badge)).person.name).toBe('Esi')
  })

  it('leads nobody in by the former secret while a new one is being made', async () => {
    const badge = await badgeOf(bakery.early)
    const [shown] = await Promise.all([show(badge), badgeOf(bakery.early)])
    if (shown.ok) expect(await onIt(shown.value.shiftToken)).toBeNull()
    else expect(refusalOf(shown)).toBe('wrong-badge')
    expect(await db().stationShift.count({ where: { bakeryId: bakery.bakeryId, endedAt: null } })).toBe(0)
  })
})

describe('making a badge', () => {
  const personOf = () => bakery.early.personId
  const make = (who: TestBakery['head'], personId: string, password = who.password) =>
    makeBadge.call(callerOf(who.sessionSecret, testNow, password), { personId })

  it('is for whoever manages the person, by their own password, and says to the person who did it', async () => {
    expect(refusalOf(await make(bakery.head, personOf(), 'wrong'))).toBe('wrong-password password:not-your-password')
    const { code } = valueOf(await make(bakery.head, personOf()))
    expect(valueOf(await show(code)).person.name).toBe('Esi')
    const badge = { madeAt: testNow, madeBy: { name: 'Henk' } }
    expect(valueOf(await getAccount.call(bakery.early.caller, {})).badge).toEqual(badge)
    expect(valueOf(await getPerson.call(bakery.owner.caller, { personId: personOf() })).badge).toEqual(badge)
    await givePin(bakery.owner)
    expect(refusalOf(await make(bakery.head, bakery.owner.personId))).toBe('not-allowed')
    expect(refusalOf(await make(bakery.late, personOf()))).toBe('not-allowed')
    expect(refusalOf(await make(bakery.owner, bakery.owner.personId))).toBe('not-allowed')
    const nextDoor = await makeBakery('Next door')
    expect(refusalOf(await make(nextDoor.owner, personOf()))).toBe('not-found')
    expect(refusalOf(await withdrawBadge.call(nextDoor.owner.caller, { personId: personOf() }))).toBe('not-found')
    expect(refusalOf(await withdrawBadge.call(bakery.head.caller, { personId: bakery.owner.personId }))).toBe(
      'not-allowed',
    )
    expect(valueOf(await show(code)).person.name).toBe('Esi')
  })

  it('wants a PIN first, which the database asks as well, and one’s own password for one’s own', async () => {
    expect(refusalOf(await make(bakery.head, bakery.late.personId))).toBe('badge-wants-pin')
    const { sessionSecret, password } = bakery.late
    const own = (typed: string) => makeOwnBadge.call(callerOf(sessionSecret, testNow, typed), {})
    expect(refusalOf(await own(password))).toBe('badge-wants-pin')
    const row = { bakeryId: bakery.bakeryId, madeById: bakery.late.personId, madeAt: testNow, hash: '0'.repeat(64) }
    await expect(db().badge.create({ data: { ...row, personId: bakery.late.personId } })).rejects.toThrow()
    await givePin(bakery.late)
    expect(refusalOf(await own('wrong'))).toBe('wrong-password password:not-your-password')
    expect(valueOf(await own(password)).code).toMatch(/^EVENDOUGH/)
  })
})

describe('guessing a badge', () => {
  const guess = (i: number, at = station) => show(`EVENDOUGH${String(i).padStart(39, '0')}`, at)

  it('two hundred times at once is judged ten times at a tablet, a right one is refused alike, and all is in the record', async () => {
    const badge = await badgeOf(bakery.early)
    const guesses = await Promise.all(Array.from({ length: 200 }, (_, i) => guess(i)))
    expect(guesses.filter((each) => refusalOf(each) === 'wrong-badge')).toHaveLength(10)
    expect(refusalOf(await show(badge))).toBe('too-many-badges')
    expect((await actionsOf()).filter((action) => action === 'refused.badge')).toHaveLength(10)
    expect(valueOf(await show(badge, station, minutes(16))).person.name).toBe('Esi')
  })

  it('counts with PINs that were guessed there, and a right badge does not lift what others tried', async () => {
    const badge = await badgeOf(bakery.early)
    for (let i = 0; i < 9; i++) {
      expect(refusalOf(await guess(i))).toBe('wrong-badge')
      valueOf(await show(badge))
    }
    expect(refusalOf(await show('of another kind'))).toBe('wrong-badge')
    expect(refusalOf(await show(badge))).toBe('too-many-badges')
    await expect(tokenAt(station, bakery.early)).rejects.toThrow('too-many-pins')
  })
})
