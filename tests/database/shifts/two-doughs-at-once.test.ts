import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest'
import { inTransaction } from '@/lib/db/transaction'
import { logReading } from '@/lib/kitchen/readings/log-reading'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { lockBatch } from '@/lib/kitchen/batches/lock-batch'
import { moveBatch } from '@/lib/kitchen/shifts/move-batch'
import { makeApprovedTrial, type ApprovedTrial } from '../../support/approved-trial'
import { makeBakery, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'

let database: FreshDatabase
let bakery: TestBakery
let trial: ApprovedTrial

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
})
afterAll(() => database.drop())
beforeEach(async () => {
  trial = await makeApprovedTrial(bakery)
  for (const { batchId } of trial.batches)
    valueOf(await beginBatch.call(bakery.early.caller, { batchId, seenRevision: 1, cleanDownDone: true }))
})

it.each(['dough', 'order'] as const)(
  'one dough is written while somebody holds another of its trial for a decision that rests on the %s',
  async (restsOn) => {
    const [held, other] = trial.batches.map(({ batchId }) => batchId)
    await inTransaction(async (tx) => {
      await lockBatch(tx, bakery.bakeryId, held!, restsOn)
      const reading = {
        id: uuid(),
        batchId: other,
        measureId: trial.measures['dough-temp'],
        repeat: 1,
        value: '26',
        unit: '°C',
        takenAt: testNow.toISOString(),
      }
      valueOf(await logReading.call(bakery.early.caller, reading))
      valueOf(await moveBatch.call(bakery.early.caller, { batchId: other, seenRevision: 2, to: 'in_work' }))
    })
  },
)

it.each(['dough', 'order'] as const)(
  'nobody ends the trial while a dough of it is held for a decision that rests on the %s',
  async (restsOn) => {
    await inTransaction(async (tx) => {
      await lockBatch(tx, bakery.bakeryId, trial.batches[0]!.batchId, restsOn)
      await connected(database.appUrl, async (client) => {
        await expect(
          client.query('SELECT 1 FROM trial WHERE id = $1 FOR UPDATE NOWAIT', [trial.trialId]),
        ).rejects.toMatchObject({ code: '55P03' })
      })
    })
  },
)

it('two who decide on the order wait for each other', async () => {
  await inTransaction(async (tx) => {
    await lockBatch(tx, bakery.bakeryId, trial.batches[0]!.batchId, 'order')
    await connected(database.appUrl, async (client) => {
      await expect(
        client.query('SELECT 1 FROM trial WHERE id = $1 FOR NO KEY UPDATE NOWAIT', [trial.trialId]),
      ).rejects.toMatchObject({ code: '55P03' })
    })
  })
})
