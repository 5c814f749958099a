import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { findActor } from '@/lib/auth/find-actor'
import { changeSettings } from '@/lib/kitchen/people/change-settings'
import { choosePin } from '@/lib/kitchen/people/choose-pin'
import { changePerson } from '@/lib/kitchen/people/change-person'
import { signIn } from '@/lib/kitchen/people/sign-in'
import { takePinAway } from '@/lib/kitchen/people/take-pin-away'
import { getStation } from '@/lib/kitchen/stations/get-station'
import { goOn } from '@/lib/kitchen/stations/go-on'
import { logOff } from '@/lib/kitchen/stations/log-off'
import { logOn } from '@/lib/kitchen/stations/log-on'
import { withdrawStation } from '@/lib/kitchen/stations/withdraw-station'
import { callerOf, makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import { isStillThere } from '../../support/is-still-there'
import { statementsOf } from '../../support/statements-of'
import { atStation, enrolledStation, givePin, testPin, tokenAt, type TestStation } from '../../support/stations'

let database: FreshDatabase
let bakery: TestBakery
let station: TestStation
beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery()
  station = await enrolledStation(bakery)
  for (const person of [bakery.owner, bakery.head, bakery.early]) await givePin(person)
})
afterAll(() => database.drop())

const minutes = (count: number) => new Date(testNow.getTime() + count * 60_000)
const onIt = async (token: string | null, now = testNow, at = station) =>
  valueOf(await getStation.call(atStation(at, token, now), {})).onShift?.name ?? null
const settings = {
  bakeryName: 'Own times',
  worksAlone: false,
  costChangeLimitPct: 1,
  dayTurnsAtH: 0,
  language: null,
  timeZone: 'Europe/Berlin',
  locale: 'en-GB',
  currency: 'EUR',
  region: 'eu',
  massUnits: 'metric',
  temperatureUnits: 'celsius',
}
const wrong = 'invalid pin:wrong-pin'
const guess = (personId: string, pin: string, now = testNow, at = station) =>
  logOn.call(atStation(at, null, now), { personId, pin })

describe('choosing a PIN', () => {
  const choose = (pin: string, password = bakery.late.password) =>
    choosePin.call(callerOf(bakery.late.sessionSecret, testNow, password), { pin })

  it.each(['12345', '1234567', '40275a', '', ' 402759', '٤٠٢٧٥٩', '4027.9'])(
    'takes six digits: not %j',
    async (pin) => {
      expect(refusalOf(await choose(pin))).toBe('invalid pin:pin-not-six-digits')
    },
  )

  it.each(['000000', '123456', '654321', '890123', '210987', '121212', '407407', '198512', '241985'])(
    'refuses %s, which somebody would try first',
    async (pin) => {
      expect(refusalOf(await choose(pin))).toBe('invalid pin:pin-simple')
    },
  )

  it('asks the password, and keeps an Argon2id string that the PIN alone is not right for', async () => {
    expect(refusalOf(await choose(testPin, 'wrong'))).toBe('wrong-password password:not-your-password')
    valueOf(await choose(testPin))
    const { hash } = await db().pin.findFirstOrThrow({ where: { personId: bakery.late.personId } })
    expect(hash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/)
    const { isPassword } = await import('@/lib/auth/password-hash')
    expect(await isPassword(hash, testPin)).toBe(false)
  })

  it('anew, or having it taken away, logs off everywhere', async () => {
    const token = await tokenAt(station, bakery.late)
    expect(await onIt(token)).toBe('Lars')
    valueOf(await choose('730418'))
    expect(await onIt(token)).toBeNull()
    const next = await tokenAt(station, bakery.late, '730418')
    valueOf(await takePinAway.call(bakery.head.caller, { personId: bakery.late.personId }))
    expect(await onIt(next)).toBeNull()
    expect(refusalOf(await guess(bakery.late.personId, '730418'))).toBe(wrong)
    expect(refusalOf(await takePinAway.call(bakery.head.caller, { personId: bakery.owner.personId }))).toBe(
      'not-allowed',
    )
  })
})

describe('at a tablet', () => {
  it('a PIN logs its person on there, and another one leaves the first a tap away', async () => {
    const [early, head] = [await tokenAt(station, bakery.early), await tokenAt(station, bakery.head)]
    expect([await onIt(early), await onIt(head), await onIt(null)]).toEqual(['Esi', 'Henk', null])
    const entry = await db().auditEntry.findFirstOrThrow({
      where: { bakeryId: bakery.bakeryId, action: 'stations.log-on' },
      orderBy: { number: 'desc' },
    })
    expect([entry.by, entry.personId, entry.targetId]).toEqual(['station', null, bakery.head.personId])
  })

  it('ends after ten minutes without a touch and goes on by a tap, until four hours after the PIN', async () => {
    const token = await tokenAt(station, bakery.early)
    expect(await onIt(token, new Date(minutes(10).getTime() - 1))).toBe('Esi')
    // The look before was a touch, but noted at most once a minute.
    const from = 10
    expect(await onIt(token, minutes(from + 10))).toBeNull()
    const resume = (now: Date) => goOn.call(atStation(station, null, now), { shiftToken: token })
    expect(valueOf(await resume(minutes(from + 11))).person.name).toBe('Esi')
    expect(await onIt(token, minutes(from + 12))).toBe('Esi')
    expect(valueOf(await resume(minutes(239))).person.name).toBe('Esi')
    expect(await onIt(token, minutes(240))).toBeNull()
    expect(refusalOf(await resume(minutes(240)))).toBe('pin-again')
  })

  it('goes by the bakery’s own times, and a longer one is for no PIN that was given before', async () => {
    const place = await makeBakery('Own times')
    const bench = await enrolledStation(place)
    await givePin(place.early)
    let seenRevision = 1
    const set = async (stationIdleMin: number, pinLastsH: number) =>
      valueOf(
        await changeSettings.call(place.owner.caller, {
          ...settings,
          stationIdleMin,
          pinLastsH,
          seenRevision: seenRevision++,
        }),
      )
    const here = (token: string, now: Date) => onIt(token, now, bench)
    const endOf = async (token: string) =>
      valueOf(await goOn.call(atStation(bench, null), { shiftToken: token })).endsAt
    await set(3, 2)
    const token = await tokenAt(bench, place.early)
    expect(await here(token, new Date(minutes(3).getTime() - 1))).toBe('Esi')
    expect(await here(token, minutes(6))).toBeNull()
    expect(valueOf(await getStation.call(atStation(bench, null), {})).bakery.stationIdleMin).toBe(3)
    expect(await endOf(token)).toBe(minutes(120).toISOString())
    // More time without a touch is everybody's; more time for a PIN is not.
    await set(60, 12)
    expect(await here(token, minutes(59))).toBe('Esi')
    expect(await endOf(token)).toBe(minutes(120).toISOString())
    const longer = await tokenAt(bench, place.early)
    expect(await endOf(longer)).toBe(minutes(720).toISOString())
    await set(60, 1)
    expect(await endOf(longer)).toBe(minutes(60).toISOString())
    expect(refusalOf(await goOn.call(atStation(bench, null, minutes(60)), { shiftToken: longer }))).toBe('pin-again')
  })

  it('is noted once a minute, and no request in between writes anything', async () => {
    const bench = await enrolledStation(bakery, 'Noted')
    const token = await tokenAt(bench, bakery.head)
    const ask = async (now: Date) => statementsOf(() => onIt(token, now, bench))
    const first = await ask(testNow)
    const between = await ask(new Date(minutes(1).getTime() - 1))
    const later = await ask(new Date(minutes(1).getTime() + 1))
    expect([first.answer, between.answer, later.answer]).toEqual(['Henk', 'Henk', 'Henk'])
    expect(later.statements - between.statements).toBe(2)
    expect(between.statements).toBe(first.statements)
  })

  it('a token is of one tablet: at another one it is nobody’s', async () => {
    const token = await tokenAt(station, bakery.early)
    const oven = await enrolledStation(bakery, 'Oven')
    expect(await onIt(token, testNow, oven)).toBeNull()
    expect(refusalOf(await goOn.call(atStation(oven, null), { shiftToken: token }))).toBe('pin-again')
    expect(refusalOf(await getStation.call(atStation({ secret: token }, token), {}))).toBe('not-signed-in')
    expect(await onIt('made-up')).toBeNull()
  })

  it('a PIN is of no use without a tablet, and of a neighbour’s person of none at all', async () => {
    const other = await makeBakery('Next door')
    await givePin(other.early)
    expect(refusalOf(await guess(other.early.personId, testPin))).toBe(wrong)
    const asked = { personId: bakery.early.personId, pin: testPin }
    expect(refusalOf(await logOn.call(callerOf(null), asked))).toBe('not-signed-in')
    expect(refusalOf(await logOn.call(bakery.early.caller, asked))).toBe('not-allowed')
  })

  it('logging off ends it there, and nobody else’s', async () => {
    const [early, head] = [await tokenAt(station, bakery.early), await tokenAt(station, bakery.head)]
    valueOf(await logOff.call(atStation(station, early), {}))
    expect([await onIt(early), await onIt(head)]).toEqual([null, 'Henk'])
    expect(refusalOf(await goOn.call(atStation(station, null), { shiftToken: early }))).toBe('pin-again')
    valueOf(await logOff.call(atStation(station, null), {}))
  })

  it('who is switched off, or gets another role, is on no tablet any more, also in the middle of an act', async () => {
    const place = await makeBakery('Switched')
    const bench = await enrolledStation(place)
    for (const [person, works, role] of [
      [place.early, false, 'shift_baker'],
      [place.late, true, 'head_baker'],
    ] as const) {
      await givePin(person)
      const token = await tokenAt(bench, person)
      const actor = (await findActor(db(), atStation(bench, token), testNow))!
      expect(await isStillThere(actor, testNow)).toBe(true)
      const change = { personId: person.personId, name: person.name, role, works, seenRevision: 1 }
      valueOf(await changePerson.call(place.owner.caller, change))
      expect(await isStillThere(actor, testNow)).toBe(false)
      expect(await onIt(token, testNow, bench)).toBeNull()
    }
    expect(valueOf(await getStation.call(atStation(bench, null), {})).people.map(({ name }) => name)).toEqual(['Lars'])
    expect(refusalOf(await guess(place.early.personId, testPin, testNow, bench))).toBe(wrong)
  })

  it('one that is withdrawn takes whoever is on it along', async () => {
    const bench = await enrolledStation(bakery, 'Withdrawn')
    const token = await tokenAt(bench, bakery.early)
    const actor = (await findActor(db(), atStation(bench, token), testNow))!
    valueOf(await withdrawStation.call(bakery.owner.caller, { stationId: bench.stationId }))
    expect(await isStillThere(actor, testNow)).toBe(false)
    expect(refusalOf(await getStation.call(atStation(bench, token), {}))).toBe('not-signed-in')
    expect(refusalOf(await guess(bakery.early.personId, testPin, testNow, bench))).toBe('not-signed-in')
  })
})

describe('guessing a PIN', () => {
  it('two hundred times from ten tablets at once is judged five times, a right one is refused alike, and the password still works', async () => {
    const place = await makeBakery('Guessers')
    await givePin(place.early)
    const tablets = await Promise.all(Array.from({ length: 10 }, (_, i) => enrolledStation(place, `Tablet ${i}`)))
    const { personId, email, password } = place.early
    const guesses = await Promise.all(
      Array.from({ length: 200 }, (_, i) => guess(personId, '111111', testNow, tablets[i % 10])),
    )
    expect(guesses.filter((each) => refusalOf(each) === wrong)).toHaveLength(5)
    expect(refusalOf(await guess(personId, testPin, testNow, tablets[0]))).toBe('too-many-pins')
    expect(await db().auditEntry.count({ where: { bakeryId: place.bakeryId, action: 'refused.pin' } })).toBe(5)
    expect(valueOf(await signIn.call(callerOf(null), { email, password }))).not.toBeNull()
    // The wait doubles; a new PIN at the desk ends it.
    await givePin(place.early, '730418')
    expect(await tokenAt(tablets[0]!, place.early, '730418')).toBeTruthy()
  })

  it('of everybody at one tablet is slowed down too, and a right one of somebody’s own does not lift that', async () => {
    const place = await makeBakery('One tablet')
    const bench = await enrolledStation(place)
    const people = [place.owner, place.head, place.early, place.late]
    for (const person of people) await givePin(person)
    let judged = 0
    for (let i = 0; i < 16; i++) {
      const person = people[i % 3]!
      if (refusalOf(await guess(person.personId, '111111', testNow, bench)) === wrong) judged++
      if (i === 4) await tokenAt(bench, place.late)
    }
    expect(judged).toBe(10)
    expect(refusalOf(await guess(place.late.personId, testPin, testNow, bench))).toBe('too-many-pins')
  })
})

it('no PIN, token or hash is in an answer or in the record', async () => {
  const token = await tokenAt(station, bakery.early)
  const answers = JSON.stringify([
    await getStation.call(atStation(station, token), {}),
    await goOn.call(atStation(station, null), { shiftToken: token }),
    await guess(bakery.early.personId, '999998'),
  ])
  const [row] = await db().$queryRaw<{ all: string }[]>`
    SELECT string_agg(t::text, ' ') AS all FROM (SELECT to_jsonb(a) AS t FROM audit_entry a
       UNION ALL SELECT to_jsonb(f) FROM answered_form f UNION ALL SELECT to_jsonb(s) FROM station_shift s) AS everything`
  for (const each of [token, testPin, '999998', 'argon2'])
    for (const text of [answers, row?.all]) expect(text).not.toContain(each)
})
