import 'server-only'
import { levelOf } from '../../auth/rights'
import { command } from '../command'
import { Refusal } from '../refusal'
import { lockBatch } from '../shifts/lock-batch'
import { mustBeOpen } from '../shifts/must-be-open'
import { staleRefusal } from '../stale'
import { answerOfReading } from './answer-of-reading'
import { correctReadingInput } from './correct-reading.input'
import { enteredValue } from './entered-value'
import { hashOfContent } from './hash-of-content'
import { keepReading } from './keep-reading'
import { loadRangeFacts } from './load-range-facts'
import { mustBeConfirmed } from './must-be-confirmed'
import { mustBePlace } from './must-be-place'
import { plausibleRange } from './plausible-range'
import { isOutside } from './range-of-reading'
import { measureColumns, readingColumns } from './reading-columns'
import { readingsAtPlace } from './readings-at-place'
import { levelOfPiece, mayCorrect } from './rules'

/**
 * Puts a reading in the place of one that was wrong, with a reason; both stay. It keeps the time at which the wrong one
 * was taken. A shift baker corrects their own in the shift in which it was taken, head baker and owner any. Sent twice
 * under its id it is kept once, as in `logReading`.
 * Refuses: not-found, reading-clash, trial-closed, trial-stopped, correction-not-yours, stale, reading-there,
 * odd-reading, and what is wrong at a field.
 */
export const correctReading = command({
  name: 'readings.correct-reading',
  input: correctReadingInput,
  right: 'correct-reading',
  async run({ tx, actor, now, input }) {
    const { bakeryId } = actor
    const contentHash = hashOfContent(input)
    const wrong = await tx.reading.findUnique({
      where: { bakeryId_id: { bakeryId, id: input.supersedesId } },
      select: { ...readingColumns, valueEntered: true, unitEntered: true, measure: { select: measureColumns } },
    })
    if (!wrong) throw new Refusal('not-found')
    const batch = await lockBatch(tx, bakeryId, wrong.batchId)
    const { measure } = wrong
    const piece = input.piece ?? null
    // The level goes with the piece: another piece may be of another level.
    const place = { batchId: wrong.batchId, measureId: wrong.measureId, piece, factorLevel: piece === null ? null : levelOfPiece(piece, batch.trial.factorLevels) }
    const changed = ['shift', `batch:${batch.id}`, `trial:${batch.trialId}`]

    const known = await tx.reading.findUnique({ where: { bakeryId_id: { bakeryId, id: input.id } }, select: readingColumns })
    if (known) {
      if (known.contentHash !== contentHash) throw new Refusal('reading-clash')
      const atPlace = await readingsAtPlace(tx, bakeryId, batch.trialId, place)
      return { value: answerOfReading(known, true, measure, atPlace), audit: { target: wrong.id, after: 'sent again, kept once' }, changed }
    }

    mustBeOpen(batch.trial.state)
    if (!mayCorrect({ level: levelOf(actor, 'correct-reading'), personId: actor.personId, reading: wrong, now })) {
      throw new Refusal('correction-not-yours')
    }
    const corrected = await tx.reading.count({ where: { bakeryId, supersedesId: wrong.id } })
    if (corrected > 0) throw await staleRefusal(tx, actor, wrong.id)
    mustBePlace(place, measure, batch.trial)
    const value = enteredValue(input, measure)
    const others = (await readingsAtPlace(tx, bakeryId, batch.trialId, place)).filter(({ id }) => id !== wrong.id)
    if (others.some(({ repeat }) => repeat === input.repeat)) throw new Refusal('reading-there')
    const range = plausibleRange(measure, batch.arm.position, await loadRangeFacts(tx, bakeryId, batch.trialId, [measure]))
    mustBeConfirmed(value, range, measure.unit, input.confirmed ?? false)

    const reading = await keepReading(tx, actor, input, {
      trialId: wrong.trialId,
      place,
      value,
      range,
      takenAt: wrong.takenAt,
      receivedAt: now,
      contentHash,
      supersedes: { id: wrong.id, reason: input.reason },
    })
    return {
      value: answerOfReading(reading, false, measure, [...others, reading].sort((a, b) => a.repeat - b.repeat)),
      audit: {
        target: wrong.id,
        before: { piece: wrong.piece, repeat: wrong.repeat, value: wrong.valueEntered, unit: wrong.unitEntered },
        after: { batch: batch.code, measure: measure.name, piece: place.piece, repeat: input.repeat, value: input.value, unit: input.unit, reading: reading.id, hash: contentHash, ...(isOutside(reading, measure) ? { outsideAndConfirmed: range } : {}) },
        reason: input.reason,
      },
      changed,
    }
  },
})
