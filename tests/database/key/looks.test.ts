import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { lookToday } from '@/lib/kitchen/key/look-today'
import { noteLook } from '@/lib/kitchen/key/note-look'
import type { Look } from '@/lib/kitchen/key/note-look.input'
import { findCaller } from '@/lib/kitchen/find-caller'
import { stopTrial } from '@/lib/kitchen/trials/stop-trial'
import { makeApprovedTrial, type ApprovedTrial } from '../../support/approved-trial'
import { callerOf, makeBakery, refusalOf, valueOf, type TestBakery } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'
import { openTheKey } from '../../support/open-the-key'

let database: FreshDatabase
let bakery: TestBakery
let trial: ApprovedTrial

beforeAll(async () => {
  database = await freshDatabase()
})
afterAll(() => database.drop())
beforeEach(async () => {
  bakery = await makeBakery('Mill Row', evening)
  trial = await makeApprovedTrial(bakery)
})

/** Ten to midnight in Berlin on 2 March, and a quarter of an hour later. */
const evening = new Date('2026-03-02T22:50:00Z')
const afterMidnight = new Date('2026-03-02T23:05:00Z')
const at = (now: Date) => callerOf(bakery.early.sessionSecret, now)
const look = (now: Date, what: Look['what'] = 'result') => noteLook.call(at(now), { trialId: trial.trialId, what })
const entries = () => db().auditEntry.count({ where: { bakeryId: bakery.bakeryId, action: 'key.note-look' } })

describe('a look', () => {
  it('is in the record once a day of the bakery’s, by person and by what was looked at', async () => {
    expect(valueOf(await look(evening))).toMatchObject({ isFirst: true })
    expect(valueOf(await look(new Date(evening.getTime() + 60_000)))).toMatchObject({ isFirst: false })
    expect(await entries()).toBe(1)
    valueOf(await look(afterMidnight))
    valueOf(await look(evening, 'evidence'))
    expect(await entries()).toBe(3)
    valueOf(
      await noteLook.call(callerOf(bakery.late.sessionSecret, evening), { trialId: trial.trialId, what: 'result' }),
    )
    expect(await entries()).toBe(4)
    const days = await db().look.findMany({
      where: { bakeryId: bakery.bakeryId, what: 'result' },
      select: { day: true },
    })
    expect(days.map(({ day }) => day.toISOString().slice(0, 10)).sort()).toEqual([
      '2026-03-02',
      '2026-03-02',
      '2026-03-03',
    ])
  })

  it('is there once where two processes note it at the same moment', async () => {
    const both = await Promise.all(Array.from({ length: 4 }, () => look(evening)))
    expect(both.map((each) => valueOf(each).isFirst).filter(Boolean)).toHaveLength(1)
    expect(await entries()).toBe(1)
  })

  it('of the day is said by the opening of the key itself', async () => {
    await openTheKey(at(evening), trial.trialId)
    expect(valueOf(await look(evening, 'key'))).toMatchObject({ isFirst: false })
    expect(valueOf(await look(afterMidnight, 'key'))).toMatchObject({ isFirst: true })
  })

  it('is no change of the trial: a stale form does not name who looked', async () => {
    valueOf(await look(evening))
    const stale = await stopTrial.call(callerOf(bakery.head.sessionSecret, evening), {
      trialId: trial.trialId,
      seenRevision: 99,
      reason: 'Off.',
    })
    expect(JSON.stringify(stale)).not.toContain(bakery.early.name)
    expect(refusalOf(stale)).toBe('stale-moved-on')
  })

  it('of another bakery’s trial is none', async () => {
    const neighbour = await makeBakery('Next Door', evening)
    const by = callerOf(neighbour.owner.sessionSecret, evening)
    expect(refusalOf(await noteLook.call(by, { trialId: trial.trialId, what: 'result' }))).toBe('not-found')
    expect(await db().look.count({ where: { bakeryId: neighbour.bakeryId } })).toBe(0)
  })

  it('asks the database nothing while this process knows that it is noted, and again on the next day', async () => {
    const read = async (now: Date) => {
      const caller = at(now)
      const actor = await findCaller(caller, now)
      if (actor?.kind !== 'desk') throw new Error('somebody is signed in')
      await lookToday({ ...caller, actor }, { trialId: trial.trialId, what: 'result' })
    }
    await read(evening)
    expect(await entries()).toBe(1)
    // Taken away behind its back, as nobody can: a second one would show that it asked.
    await connected(database.ownerUrl, async (client) => {
      await client.query('ALTER TABLE look DISABLE TRIGGER USER')
      await client.query('DELETE FROM look WHERE bakery_id = $1', [bakery.bakeryId])
      await client.query('ALTER TABLE look ENABLE TRIGGER USER')
    })
    await read(new Date(evening.getTime() + 60_000))
    expect(await entries()).toBe(1)
    await read(afterMidnight)
    expect(await entries()).toBe(2)
  })

  it('of nobody is none', async () => {
    await lookToday({ ...callerOf(null, evening), actor: null }, { trialId: trial.trialId, what: 'result' })
    expect(await db().look.count({ where: { bakeryId: bakery.bakeryId } })).toBe(0)
  })
})
