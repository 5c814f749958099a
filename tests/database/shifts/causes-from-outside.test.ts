import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { readCause } from '@/lib/documents/cause/read-cause'
import { textOfCause } from '@/lib/documents/cause/text-of-cause.input'
import { listLacking } from '@/lib/kitchen/intake/list-lacking'
import { takeEntries } from '@/lib/kitchen/intake/take-entries'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { getBatch } from '@/lib/kitchen/shifts/get-batch'
import { noteCause } from '@/lib/kitchen/shifts/note-cause'
import { stopTrial } from '@/lib/kitchen/trials/stop-trial'
import { makeApprovedTrial, type ApprovedTrial } from '../../support/approved-trial'
import { makeBakery, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'
import { atStation, enrolledStation, givePin, tokenAt } from '../../support/stations'

let database: FreshDatabase
let bakery: TestBakery
let trial: ApprovedTrial
let batchId: string

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
  trial = await makeApprovedTrial(bakery)
  batchId = trial.batches[0]!.batchId
  valueOf(await beginBatch.call(bakery.early.caller, { batchId, seenRevision: 1, cleanDownDone: true }))
})
afterAll(() => database.drop())

const entry = (more: object = {}) => ({
  kind: 'cause',
  id: uuid(),
  batchId,
  what: 'The oven went off',
  takenAt: testNow.toISOString(),
  ...more,
})
const send = async (entries: object[]) => valueOf(await takeEntries.call(bakery.early.caller, { entries })).entries
const rows = (of = batchId) =>
  db().batchCause.findMany({
    where: { bakeryId: bakery.bakeryId, batchId: of },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
  })

describe('what went wrong with a dough, from outside', () => {
  it('is in the book once however often it is sent, by the hash of what was said, and never changed', async () => {
    const one = entry({ what: 'Cre\u0300me on the floor', takenAt: new Date(testNow.getTime() - 60_000).toISOString() })
    const [first, twin] = await send([one, one])
    const [again] = await send([one])
    expect([first, twin, again]).toMatchObject([{ outcome: 'kept' }, { outcome: 'kept' }, { outcome: 'kept' }])
    const kept = await rows()
    expect(kept).toMatchObject([
      { id: one.id, what: 'Cr\u00e8me on the floor', noticedAt: new Date(one.takenAt), at: testNow },
    ])
    const text = textOfCause({ batch: batchId, takenAt: one.takenAt, what: 'Cr\u00e8me on the floor' })
    expect(first).toMatchObject({ hash: kept[0]!.contentHash })
    expect(readCause(text, kept[0]!.contentHash!)).toMatchObject({ outcome: 'read', format: 1 })
    // Another one under the same id overwrites nothing.
    expect(await send([{ ...one, what: 'It was dropped' }])).toMatchObject([
      { outcome: 'refused', refusal: { code: 'cause-clash' } },
    ])
    expect(await rows()).toEqual(kept)
    const change = `UPDATE batch_cause SET what = 'nothing' WHERE id = $1`
    await expect(connected(database.ownerUrl, (client) => client.query(change, [one.id]))).rejects.toMatchObject({
      code: 'EV001',
    })
    expect(
      await db().auditEntry.count({
        where: { bakeryId: bakery.bakeryId, action: 'intake.take-entries', entryText: { contains: one.id } },
      }),
    ).toBe(1)
  })

  it('counts from when it came in, whatever the device’s clock says, and takes nothing out', async () => {
    const ahead = entry({ takenAt: new Date(testNow.getTime() + 7 * 24 * 60 * 60_000).toISOString() })
    expect(await send([ahead])).toMatchObject([{ outcome: 'kept' }])
    expect((await rows()).find(({ id }) => id === ahead.id)).toMatchObject({ noticedAt: testNow, at: testNow })
    expect(await db().batch.findFirstOrThrow({ where: { id: batchId } })).toMatchObject({ state: 'weighing' })
    const { causes } = valueOf(await getBatch.call(bakery.late.caller, { batchId }))
    expect(causes.map(({ what }) => what)).toContain('The oven went off')
  })

  it('one at fault keeps none of the others from the book', async () => {
    const neighbour = await makeBakery('Next Door')
    const theirs = await makeApprovedTrial(neighbour)
    const good = entry({ what: 'It was dropped' })
    expect(
      await send([
        entry({ batchId: theirs.batches[0]!.batchId }),
        entry({ what: '' }),
        entry({ what: 'x'.repeat(301) }),
        entry({ takenAt: 'yesterday' }),
        good,
      ]),
    ).toMatchObject([
      { outcome: 'refused', refusal: { code: 'not-found' } },
      { outcome: 'refused', refusal: { code: 'invalid' } },
      { outcome: 'refused', refusal: { code: 'invalid' } },
      { outcome: 'refused', refusal: { code: 'invalid' } },
      { outcome: 'kept', id: good.id },
    ])
    expect((await rows()).map(({ what }) => what)).toContain('It was dropped')
  })

  it('is looked for when a tablet asks what the book lacks; one from the desk is nobody’s entry', async () => {
    const station = await enrolledStation(bakery)
    await givePin(bakery.early)
    const caller = atStation(station, await tokenAt(station, bakery.early))
    const [kept] = await send([entry({ what: 'The scale broke' })])
    const lost = { id: uuid(), hash: 'a'.repeat(64) }
    const { causeId } = valueOf(
      await noteCause.call(bakery.early.caller, { batchId, what: 'The lot ran out', noticedMinAgo: 0 }),
    )
    const asked = [{ id: kept!.id!, hash: (kept as { hash: string }).hash }, lost, { id: causeId, hash: lost.hash }]
    const { lacking } = valueOf(await listLacking.call(caller, { entries: asked }))
    expect(lacking).toEqual([lost.id, causeId])
  })

  it('is refused once the trial is over, and a twin of what came before is still answered', async () => {
    const other = await makeApprovedTrial(bakery)
    const of = { batchId: other.batches[0]!.batchId }
    const before = entry({ ...of, what: 'The dough is lost' })
    await send([before])
    const stop = { trialId: other.trialId, seenRevision: 1, reason: 'No flour left' }
    valueOf(await stopTrial.call(bakery.head.caller, stop))
    expect(await send([entry(of), before])).toMatchObject([
      { outcome: 'refused', refusal: { code: 'trial-stopped' } },
      { outcome: 'kept', id: before.id },
    ])
  })
})
