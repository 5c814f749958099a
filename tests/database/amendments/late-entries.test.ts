import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { decideAmendment } from '@/lib/kitchen/amendments/decide-amendment'
import type { Caller } from '@/lib/kitchen/caller'
import { listWaiting } from '@/lib/kitchen/desk/list-waiting'
import { takeEntries, type EntryAnswer } from '@/lib/kitchen/intake/take-entries'
import { correctReading } from '@/lib/kitchen/readings/correct-reading'
import { listKeptAside } from '@/lib/kitchen/readings/list-kept-aside'
import { logReading } from '@/lib/kitchen/readings/log-reading'
import { settleEntry } from '@/lib/kitchen/readings/settle-entry'
import { getResult } from '@/lib/kitchen/amendments/get-result'
import { callerOf, makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { closeAsItIs } from '../../support/close-as-it-is'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'
import { plantTrial, type PlantedTrial } from '../../support/planted-trial'

/* What a device took before the readings of a trial were closed, and sends after. */
let database: FreshDatabase
let bakery: TestBakery
let planted: PlantedTrial
beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
})
afterAll(() => database.drop())

const doughs = [1, 2].flatMap((day) =>
  [0, 1].map((arm) => ({
    arm,
    day,
    state: day === 2 && arm === 1 ? ('in_work' as const) : ('measured' as const),
    loaves: [1, 2, 3].map((loaf) => {
      const volume = 1600 + 160 * arm + 20 * day + 3 * loaf
      return { massG: 400, volumesMl: [volume, volume + 2] as [number, number] }
    }),
  })),
)
beforeEach(async () => {
  planted = await plantTrial(bakery, { state: 'baking', mixingDays: 2, doughs, at: testNow })
})
const close = () => closeAsItIs(bakery, planted.trialId, testNow, 'stopped', 'The oven is broken.')

const reading = (change: Record<string, unknown> = {}) => ({
  kind: 'reading',
  id: uuid(),
  batchId: planted.batchIds.get('1-1')!,
  measureId: planted.measureIds.get('loaf-mass')!,
  piece: 4,
  repeat: 1,
  value: '412.5',
  unit: 'g',
  takenAt: new Date(testNow.getTime() - 3_600_000).toISOString(),
  ...change,
})
const correction = (supersedesId: string, change: Record<string, unknown> = {}) => ({
  kind: 'correction',
  id: uuid(),
  supersedesId,
  piece: 4,
  repeat: 1,
  value: '421.5',
  unit: 'g',
  reason: 'typed it wrong',
  ...change,
})
const send = async (entries: readonly unknown[], caller: Caller = bakery.early.caller) =>
  valueOf(await takeEntries.call(caller, { entries })).entries
const told = (answers: readonly EntryAnswer[]) =>
  answers.map((each) => (each.outcome === 'kept' ? 'kept' : each.refusal.code))
const look = async (caller: Caller = bakery.head.caller) =>
  valueOf(await getResult.call(caller, { trialId: planted.trialId })).after!
const changes = async () =>
  (await look()).amendments.map(({ change, isLate }) => {
    if (change.kind !== 'reading') throw new Error(change.kind)
    return [isLate, change.piece, change.repeat, change.old?.valueEntered ?? null, change.new.valueEntered]
  })
const closedMass = (piece: number) =>
  db().reading.findFirstOrThrow({
    where: { batchId: planted.batchIds.get('1-1')!, measureId: planted.measureIds.get('loaf-mass')!, piece },
  })
const first = async () => {
  const { after: _, ...result } = valueOf(await getResult.call(bakery.early.caller, { trialId: planted.trialId }))
  return result
}

describe('entries that come after the closing', () => {
  it('are kept, acknowledged, and proposed amendments, in the order of the device', async () => {
    await close()
    const before = await first()
    const sent = [reading(), reading({ piece: 1, value: '405' }), reading({ piece: 2, value: '406' })]
    const answers = await send(sent)
    expect(told(answers)).toEqual(['aside-trial-closed', 'aside-trial-closed', 'aside-trial-closed'])
    expect(answers.map(({ id }) => id)).toEqual(sent.map(({ id }) => id))
    expect(await changes()).toEqual([
      [true, 4, 1, null, '412.5'],
      [true, 1, 1, '400', '405'],
      [true, 2, 1, '400', '406'],
    ])
    const { amendments, fault, unread } = await look()
    expect(amendments.map(({ by, reason, verdict }) => [by, reason, verdict])).toEqual(
      sent.map(() => ['Esi', null, null]),
    )
    expect([fault, unread]).toEqual([null, 0])
    expect(await first()).toEqual(before)
    expect(await db().reading.count({ where: { id: { in: sent.map(({ id }) => id) } } })).toBe(0)
  })

  it('are answered the same when they come again, and make nothing more', async () => {
    await close()
    const sent = [reading(), correction(uuid())]
    const first = await send(sent)
    expect(told(first)).toEqual(['aside-trial-closed', 'not-found'])
    expect(await send(sent)).toEqual(first)
    expect(await send([...sent, sent[0]], bakery.late.caller)).toEqual([...first, first[0]])
    expect(await db().amendment.count({ where: { trialId: planted.trialId } })).toBe(1)
  })

  it('by two devices for one place are two proposals, the earlier receipt first', async () => {
    await close()
    await send([reading({ value: '410' })])
    await send([reading({ value: '420' })], callerOf(bakery.late.sessionSecret, new Date(testNow.getTime() + 1000)))
    expect((await changes()).map(([, , , , to]) => to)).toEqual(['410', '420'])
  })

  it('that correct go on from what was closed, from each other, and from one piece to another', async () => {
    const wrong = await closedMass(1)
    await close()
    const late = reading()
    expect(
      told(
        await send([
          correction(wrong.id, { piece: 1, value: '433' }),
          late,
          correction(late.id),
          correction((await closedMass(2)).id, { piece: 4, value: '402' }),
        ]),
      ),
    ).toEqual(['aside-trial-closed', 'aside-trial-closed', 'aside-trial-closed', 'aside-trial-closed'])
    expect(await changes()).toEqual([
      [true, 1, 1, '400', '433'],
      [true, 4, 1, null, '412.5'],
      [true, 4, 1, null, '421.5'],
      [true, 4, 1, '400', '402'],
    ])
    expect((await look()).amendments.map(({ reason }) => reason)).toEqual([
      'typed it wrong',
      null,
      'typed it wrong',
      'typed it wrong',
    ])
  })

  it('make a dough that was under way a measured one, once a second person said so', async () => {
    const batchId = planted.batchIds.get('2-1')!
    await close()
    const before = await first()
    expect(before.analysis.comparison?.arms.map(({ batches }) => batches)).toEqual([1, 1])
    await send([
      reading({ batchId, piece: 4, value: '400' }),
      reading({ batchId, measureId: planted.measureIds.get('loaf-volume')!, unit: 'mL', value: '1800' }),
    ])
    for (const { id, hash, mayDecide } of (await look()).amendments) {
      expect(mayDecide).toBe('second_person')
      valueOf(
        await decideAmendment.call(bakery.head.caller, { amendmentId: id, seenHash: hash, accept: true, note: '' }),
      )
    }
    const { second, fault } = await look()
    expect(fault).toBeNull()
    expect(second?.comparison?.arms.map(({ batches }) => batches)).toEqual([2, 2])
    expect(second?.comparison?.isIndication).toBe(true)
  })

  it('are refused by themselves where no trial could take them, and nothing is kept of those', async () => {
    await close()
    expect(
      told(
        await send([
          reading({ value: 'heavy' }),
          reading({ piece: 9 }),
          reading({ value: '9999' }),
          reading({
            measureId: planted.measureIds.get('loaf-volume')!,
            unit: 'mL',
            piece: 1,
            repeat: 3,
            value: '1700',
          }),
          reading(),
        ]),
      ),
    ).toEqual(['invalid', 'invalid', 'odd-reading', 'no-further-repeat', 'aside-trial-closed'])
    expect(await db().entryToSettle.count({ where: { trialId: planted.trialId } })).toBe(1)
  })

  it('that cannot be read as a reading stay aside, and the result counts them', async () => {
    await close()
    const late = reading()
    await send([late, correction(late.id, { unit: '°C' }), correction(late.id, { piece: 99 })])
    const { amendments, unread } = await look()
    expect([amendments.length, unread]).toEqual([1, 2])
  })

  it('wait for a second person and not to be settled', async () => {
    await close()
    const late = reading()
    const [answer] = await send([late])
    if (answer?.outcome !== 'aside') throw new Error(answer?.outcome)
    const waiting = valueOf(await listWaiting.call(bakery.owner.caller, {}))
    expect(waiting.toSettle?.rows.map(({ entryId }) => entryId)).not.toContain(late.id)
    expect(valueOf(await listKeptAside.call(bakery.head.caller, {})).rows.map(({ entryId }) => entryId)).not.toContain(
      late.id,
    )
    const settled = { entryId: answer.id, hash: answer.hash, take: true, seenReadingId: null, reason: 'late' }
    expect(refusalOf(await settleEntry.call(bakery.head.caller, settled))).toBe('not-found')
  })

  it('are held against the record: one that somebody changed past every trigger is named', async () => {
    await close()
    await send([reading()])
    const { id } = (await look()).amendments[0]!
    await connected(database.superUrl, (client) =>
      client.query(
        `ALTER TABLE amendment DISABLE TRIGGER USER;
         UPDATE amendment SET text = replace(text, '"412.5"', '"512.5"'), hash = encode(sha256(convert_to(replace(text, '"412.5"', '"512.5"'), 'UTF8')), 'hex') WHERE id = '${id}';
         ALTER TABLE amendment ENABLE TRIGGER USER`,
      ),
    )
    expect((await look()).fault).toBe('not-of-record')
  })
})

it('at the desk somebody is told that the readings are closed, and nothing is kept', async () => {
  await close()
  const { kind: _, ...entry } = reading()
  expect(refusalOf(await logReading.call(bakery.early.caller, entry))).toBe('trial-stopped')
  const { kind: __, ...corrected } = correction((await closedMass(1)).id, { piece: 1 })
  expect(refusalOf(await correctReading.call(bakery.head.caller, corrected))).toBe('trial-stopped')
  expect(await db().entryToSettle.count({ where: { trialId: planted.trialId } })).toBe(0)
})

it('a trial that ended before its readings were sealed takes nothing, as before', async () => {
  await db().trial.update({
    where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: planted.trialId } },
    data: { state: 'closed', closedAt: testNow },
  })
  expect(told(await send([reading()]))).toEqual(['trial-closed'])
  expect(valueOf(await getResult.call(bakery.head.caller, { trialId: planted.trialId })).after).toBeNull()
})
