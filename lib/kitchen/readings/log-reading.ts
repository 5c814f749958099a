import 'server-only'
import type { Tx } from '../../db/client'
import { command } from '../command'
import { Refusal } from '../refusal'
import { lockBatch } from '../shifts/lock-batch'
import { mustBeOpen } from '../shifts/must-be-open'
import { answerOfReading } from './answer-of-reading'
import { enteredValue } from './entered-value'
import { hashOfContent } from './hash-of-content'
import { keepReading } from './keep-reading'
import { loadRangeFacts } from './load-range-facts'
import { logReadingInput } from './log-reading.input'
import { mustBeConfirmed } from './must-be-confirmed'
import { mustBePlace } from './must-be-place'
import { plausibleRange } from './plausible-range'
import { isOutside } from './range-of-reading'
import { measureColumns, readingColumns } from './reading-columns'
import { readingsAtPlace } from './readings-at-place'
import { timeFault } from './rules'

/**
 * Puts one reading in the book. Its id is the device's own: the same id with the same content is answered the same and
 * kept once, also after the trial was closed; the same id with other content is refused and nothing is overwritten. A
 * value outside its plausible range is kept when it comes confirmed.
 * Refuses: not-found, reading-clash, trial-not-approved, trial-closed, trial-stopped, batch-not-begun, reading-there,
 * odd-reading, and what is wrong at a field.
 */
export const logReading = command({
  name: 'readings.log-reading',
  input: logReadingInput,
  right: 'log-reading',
  async run({ tx, actor, now, input }) {
    const { bakeryId } = actor
    const contentHash = hashOfContent(input)
    const batch = await lockBatch(tx, bakeryId, input.batchId)
    const measure = await measureOrRefuse(tx, bakeryId, input.measureId)
    const place = { batchId: batch.id, measureId: measure.id, piece: input.piece ?? null, factorLevel: input.factorLevel ?? null }
    const changed = ['shift', `batch:${batch.id}`, `trial:${batch.trialId}`]

    const known = await tx.reading.findUnique({ where: { bakeryId_id: { bakeryId, id: input.id } }, select: readingColumns })
    if (known) {
      if (known.contentHash !== contentHash) throw new Refusal('reading-clash')
      const atPlace = await readingsAtPlace(tx, bakeryId, batch.trialId, place)
      return { value: answerOfReading(known, true, measure, atPlace), audit: { target: known.id, after: 'sent again, kept once' }, changed }
    }

    mustBeOpen(batch.trial.state)
    if (batch.state === 'waiting') throw new Refusal('batch-not-begun')
    if (measure.derivation !== null) throw Refusal.at('measureId', 'measure-worked-out')
    mustBePlace(place, measure, batch.trial)
    const takenAt = new Date(input.takenAt)
    const wrongTime = timeFault(takenAt, now, batch.trial.createdAt)
    if (wrongTime) throw Refusal.at('takenAt', wrongTime)
    const value = enteredValue(input, measure)
    const before = await readingsAtPlace(tx, bakeryId, batch.trialId, place)
    if (before.some(({ repeat }) => repeat === input.repeat)) throw new Refusal('reading-there')
    const range = plausibleRange(measure, batch.arm.position, await loadRangeFacts(tx, bakeryId, batch.trialId, [measure]))
    mustBeConfirmed(value, range, measure.unit, input.confirmed ?? false)

    const reading = await keepReading(tx, actor, input, {
      trialId: batch.trialId,
      place,
      value,
      range,
      takenAt,
      receivedAt: now,
      contentHash,
    })
    return {
      value: answerOfReading(reading, false, measure, [...before, reading]),
      audit: {
        target: reading.id,
        after: { batch: batch.code, measure: measure.name, piece: place.piece, repeat: input.repeat, value: input.value, unit: input.unit, hash: contentHash, ...(isOutside(reading, measure) ? { outsideAndConfirmed: range } : {}) },
      },
      changed,
    }
  },
})

async function measureOrRefuse(tx: Tx, bakeryId: string, id: string) {
  const measure = await tx.measure.findUnique({ where: { bakeryId_id: { bakeryId, id } }, select: measureColumns })
  if (!measure) throw new Refusal('not-found')
  return measure
}
