import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { heldWith } from '@/lib/auth/station-secret'
import { db } from '@/lib/db/client'
import { getStation } from '@/lib/kitchen/stations/get-station'
import { logOn } from '@/lib/kitchen/stations/log-on'
import { withdrawStation } from '@/lib/kitchen/stations/withdraw-station'
import { callerOf, makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import { atStation, enrolledStation, givePin, testPin, type TestStation } from '../../support/stations'

let database: FreshDatabase
let bakery: TestBakery
beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery()
  await givePin(bakery.head)
})
afterAll(() => database.drop())

const dayMs = 24 * 60 * 60_000
let made = 0

const newTablet = () => enrolledStation(bakery, `Bench ${++made}`)
/** So many days after it came in, by a clock that is right. */
const after = (days: number) => new Date(testNow.getTime() + days * dayMs)

/** Logs on with what the tablet holds. @returns what it is given, and what it holds then */
async function logOnWith(held: string, now: Date) {
  const { secret } = valueOf(
    await logOn.call(atStation({ secret: held }, null, now), { personId: bakery.head.personId, pin: testPin }),
  )
  return { secret, held: secret === null ? held : heldWith(secret, held) }
}
const isLetIn = async (held: string) => (await getStation.call(atStation({ secret: held }, null, after(60)), {})).ok
const pointersOf = ({ stationId }: TestStation) => db().signInPointer.count({ where: { targetId: stationId } })

describe('a tablet’s own secret', () => {
  it('stays as it is for a month', async () => {
    const station = await newTablet()
    expect((await logOnWith(station.secret, after(29.9))).secret).toBeNull()
    expect(await pointersOf(station)).toBe(1)
  })

  it('is another one after it, and the former is good until the new one was shown', async () => {
    const station = await newTablet()
    const { secret, held } = await logOnWith(station.secret, after(30))
    expect(secret).toMatch(/^[\w-]{22}$/)
    expect([await isLetIn(station.secret), await isLetIn(held), await isLetIn(secret ?? '')]).toEqual([
      true,
      true,
      true,
    ])
    expect((await logOnWith(held, after(31))).secret).toBeNull()
    expect([await isLetIn(station.secret), await isLetIn(held)]).toEqual([false, true])
    expect(await pointersOf(station)).toBe(1)
    const entry = await db().auditEntry.findFirstOrThrow({
      where: { action: 'stations.log-on', entryText: { contains: 'newSecret' } },
    })
    expect(entry.entryText).not.toContain(secret)
  })

  it('that never came is given once more the next day, and shuts nobody out', async () => {
    const station = await newTablet()
    const lost = await logOnWith(station.secret, after(30))
    expect((await logOnWith(station.secret, after(30.9))).secret).toBeNull()
    const again = await logOnWith(station.secret, after(31))
    expect(again.secret).not.toBeNull()
    expect(again.secret).not.toBe(lost.secret)
    expect(await isLetIn(lost.secret ?? '')).toBe(false)
    expect([await isLetIn(station.secret), await isLetIn(again.held)]).toEqual([true, true])
    expect(await pointersOf(station)).toBe(2)
  })

  it('is given once when two people log on at one moment, and whichever answer is last, the tablet stays in', async () => {
    const station = await newTablet()
    await givePin(bakery.early)
    const both = await Promise.all(
      [bakery.head, bakery.early].map(({ personId }) =>
        logOn.call(atStation({ secret: station.secret }, null, after(40)), { personId, pin: testPin }),
      ),
    )
    const given = both.flatMap((result) => valueOf(result).secret ?? [])
    expect(given).toHaveLength(1)
    for (const secret of given) expect(await isLetIn(heldWith(secret, station.secret))).toBe(true)
    expect(await isLetIn(station.secret)).toBe(true)
  })

  it('is good in a book that was put back from a copy of before it', async () => {
    const station = await newTablet()
    const copy = await db().signInPointer.findFirstOrThrow({ where: { targetId: station.stationId } })
    const { held } = await logOnWith(station.secret, after(30))
    await logOnWith(held, after(31))
    await db().signInPointer.deleteMany({ where: { targetId: station.stationId } })
    await db().signInPointer.create({ data: copy })
    expect(await isLetIn(held)).toBe(true)
  })

  it('that is made up, empty or endless lets nobody in, and a withdrawn tablet is out with each of its own', async () => {
    for (const held of ['', '.', '...', 'x'.repeat(5_000), `${'x.'.repeat(50)}y`])
      expect(await isLetIn(held)).toBe(false)
    const station = await newTablet()
    const { held } = await logOnWith(station.secret, after(30))
    valueOf(await withdrawStation.call(callerOf(bakery.owner.sessionSecret), { stationId: station.stationId }))
    expect([await isLetIn(held), await isLetIn(station.secret)]).toEqual([false, false])
    expect(
      refusalOf(
        await logOn.call(atStation({ secret: held }, null, after(30)), {
          personId: bakery.head.personId,
          pin: testPin,
        }),
      ),
    ).toBe('not-signed-in')
  })

  it('of one tablet is of no use behind that of another', async () => {
    const [one, other] = [await newTablet(), await newTablet()]
    const at = valueOf(await getStation.call(atStation({ secret: `${one.secret}.${other.secret}` }, null), {}))
    expect(at.station.name).toBe(one.name)
  })
})
