import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { bookListener } from '@/lib/db/book-listener'
import { db } from '@/lib/db/client'
import type { Caller } from '@/lib/kitchen/caller'
import { followBook } from '@/lib/kitchen/live/follow-book'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { chooseLanguage } from '@/lib/kitchen/people/choose-language'
import { signOut } from '@/lib/kitchen/people/sign-out'
import { withdrawStation } from '@/lib/kitchen/stations/withdraw-station'
import { callerOf, makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '@/tests/support/bakery'
import { freshDatabase, type FreshDatabase } from '@/tests/support/database'
import { atStation, enrolledStation } from '@/tests/support/stations'

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
  neighbour = await makeBakery('Next Door')
})
afterAll(async () => {
  await bookListener().close()
  await database.drop()
})

const minuteMs = 60_000
const quick = { checkEveryMs: 20, gatherMs: 1 }
/** Looked in on by nothing but what is told. */
const told = { checkEveryMs: 10 * minuteMs, gatherMs: 1 }

async function followed(caller: Caller, pace = told, seen: number | null = null) {
  const heard = { looks: 0, isOver: false }
  const follower = { lookAgain: () => (heard.looks += 1), end: () => (heard.isOver = true) }
  const result = await followBook(caller, follower, seen, pace)
  return { heard, result, leave: () => (result.ok ? result.value.leave() : undefined) }
}
const change = (of: TestBakery) => async () => valueOf(await chooseLanguage.call(of.late.caller, { language: 'en' }))

describe('whoever follows the book', () => {
  it('is told of a change of their own bakery, whoever made it, and of no other', async () => {
    const desk = await followed(bakery.early.caller)
    const tablet = await followed(atStation(await enrolledStation(bakery), null))
    const next = await followed(neighbour.early.caller)
    await expect.poll(() => [desk, tablet, next].every(({ heard }) => heard.looks > 0), { interval: 10 }).toBe(true)
    const before = next.heard.looks
    const looks = [desk.heard.looks, tablet.heard.looks]
    await change(bakery)()
    await expect.poll(() => desk.heard.looks > looks[0]! && tablet.heard.looks > looks[1]!, { interval: 10 }).toBe(true)
    await change(neighbour)()
    await expect.poll(() => next.heard.looks, { interval: 10 }).toBe(before + 1)
    for (const each of [desk, tablet, next]) each.leave()
  })

  it('is told at once where the record went on since what they look at was made, and not where it did not', async () => {
    const { head } = await makeBakery('Between')
    const { record } = valueOf(await getDesk.call(head.caller, {}))
    // Another one's telling is what shows that the listener has begun.
    const begun = await followed(head.caller)
    await expect.poll(() => begun.heard.looks, { interval: 10 }).toBeGreaterThan(0)
    const upToDate = await followed(head.caller, told, record.number)
    expect(upToDate.heard.looks).toBe(0)
    const { looks } = begun.heard
    valueOf(await chooseLanguage.call(head.caller, { language: 'en' }))
    // Once the notice of that change is through, it reaches nobody who comes after it.
    await expect.poll(() => begun.heard.looks, { interval: 10 }).toBeGreaterThan(looks)
    const behind = await followed(head.caller, told, record.number)
    await expect.poll(() => [behind, upToDate].map(({ heard }) => heard.looks), { interval: 10 }).toEqual([1, 1])
    for (const each of [begun, upToDate, behind]) each.leave()
  })

  it('is nobody without a session, and nobody who was withdrawn, however they ask', async () => {
    for (const caller of [callerOf(null), callerOf('made-up'), atStation({ secret: 'made-up' }, null)])
      expect(refusalOf((await followed(caller)).result)).toBe('not-signed-in')
    const job: Caller = {
      kind: 'job',
      job: 'check-records',
      bakeryId: bakery.bakeryId,
      address: 'test',
      device: 'test',
      now: () => testNow,
    }
    expect(refusalOf((await followed(job)).result)).toBe('not-allowed')
  })

  it('uses no session by it, and is let go when half an hour has passed without a use', async () => {
    const { early } = await makeBakery('Left Open')
    const seen = () =>
      db().session.findFirstOrThrow({ where: { personId: early.personId }, select: { lastSeenAt: true } })
    let minutes = 0
    const now = () => new Date(testNow.getTime() + minutes * minuteMs)
    const { heard } = await followed({ ...early.caller, now }, quick)
    await expect.poll(() => heard.looks, { interval: 10 }).toBeGreaterThan(0)
    minutes = 29
    const { result, leave } = await followed({ ...early.caller, now }, quick)
    expect(result.ok).toBe(true)
    leave()
    expect(heard.isOver).toBe(false)
    minutes = 30
    await expect.poll(() => heard.isOver, { interval: 10 }).toBe(true)
    expect(await seen()).toEqual({ lastSeenAt: testNow })
  })

  it('hears nothing any more of what comes after they signed out, or their tablet was withdrawn', async () => {
    const planted = await makeBakery('Signing Out')
    const station = await enrolledStation(planted)
    const desk = await followed(planted.early.caller)
    const tablet = await followed(atStation(station, null))
    await expect.poll(() => [desk.heard.looks, tablet.heard.looks].every((looks) => looks > 0)).toBe(true)
    const { looks } = desk.heard
    valueOf(await signOut.call(planted.early.caller, {}))
    await expect.poll(() => desk.heard.isOver, { interval: 10 }).toBe(true)
    expect(desk.heard.looks).toBe(looks)
    expect(tablet.heard.isOver).toBe(false)
    valueOf(await withdrawStation.call(planted.owner.caller, { stationId: station.stationId }))
    await expect.poll(() => tablet.heard.isOver, { interval: 10 }).toBe(true)
  })

  it('has eight places, and one more for each that is left', async () => {
    const { early, late } = await makeBakery('Many Pages')
    const open = []
    for (let page = 0; page < 8; page++) open.push(await followed(early.caller))
    expect(refusalOf((await followed(early.caller)).result)).toBe('too-many-following')
    const other = await followed(late.caller)
    expect(other.result.ok).toBe(true)
    open[3]?.leave()
    open[3]?.leave()
    open.push(await followed(early.caller))
    expect(open.at(-1)?.result.ok).toBe(true)
    expect(refusalOf((await followed(early.caller)).result)).toBe('too-many-following')
    for (const each of [...open, other]) each.leave()
  })
})
