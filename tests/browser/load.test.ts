import { holdAgainstBook } from '../../lib/ops/bench/load/hold-against-book'
import { readingsOf } from '../../lib/ops/bench/load/places'
import { plantReaders, plantStations } from '../../lib/ops/bench/load/plant-callers'
import { runLoad } from '../../lib/ops/bench/load/run-load'
import { beginBatch } from '../../lib/kitchen/shifts/begin-batch'
import { makeApprovedTrial } from '../support/approved-trial'
import { expect, test } from '../support/app'
import { callerOf, valueOf } from '../support/bakery'

const stations = 50
const seconds = 15
const pieces = 20

test('fifty stations bring an entry a second beside twenty readers: nothing is lost, nothing is there twice', async ({
  app,
  bakery,
}) => {
  test.setTimeout(240_000)
  const now = new Date()
  const trial = await makeApprovedTrial(bakery, { now, days: 2, batchesPerArm: 5, pieces })
  const doughs: { batchId: string; pieces: number }[] = []
  for (const { batchId, cleanDownBefore } of trial.batches) {
    valueOf(
      await beginBatch.call(callerOf(bakery.early.sessionSecret, now), {
        batchId,
        seenRevision: 1,
        cleanDownDone: cleanDownBefore,
      }),
    )
    doughs.push({ batchId, pieces })
  }
  const whose = { bakeryId: bakery.bakeryId, personId: bakery.early.personId }
  const seen = await runLoad({
    url: app.url,
    stations: await plantStations(callerOf(bakery.owner.sessionSecret, now), whose, stations),
    readers: await plantReaders(whose, 20),
    pages: ['/shift', '/trials', `/trials/${trial.trialId}`, `/shift/${doughs[0]?.batchId}`],
    entries: readingsOf(doughs, [
      { measureId: trial.measures['loaf-mass']!, value: '420', unit: 'g' },
      { measureId: trial.measures['loaf-volume']!, value: '1600', unit: 'mL' },
    ]),
    seconds,
  })
  expect(seen.faults).toEqual([])
  expect(seen.sentAgain).toBeGreaterThan(0)
  expect(
    await holdAgainstBook(
      seen.kept,
      doughs.map(({ batchId }) => batchId),
    ),
  ).toEqual({
    lost: [],
    changed: [],
    more: [],
  })
  expect(seen.kept.size).toBe(stations * seconds)
})
