import 'server-only'
import { command } from '../command'
import { enteredValue } from '../readings/entered-value'
import { mustBePlace } from '../readings/must-be-place'
import { levelOfPiece } from '../readings/rules'
import { takesRepeat } from '../readings/takes-repeat.input'
import { Refusal } from '../refusal'
import { closedForAmending } from './closed-for-amending'
import { keepProposal } from './keep-proposal'
import { mustNotBeProposed } from './must-not-be-proposed'
import { proposeAmendmentInput } from './propose-amendment.input'
import { oldOf, readingAtPlace, readingsAt } from './reading-at-place'

/**
 * Proposes another value for a reading that was closed, or one that was missing, for a reason. It changes nothing: a
 * second person decides on it, and what was closed stands for good. The old value is what was closed.
 * Refuses: not-found, readings-not-closed, nothing-sealed, seal-broken, amendments-broken, batch-not-begun,
 * batch-not-baked, no-such-closed-reading, reading-closed-there, no-further-repeat, amendment-waits-already; and at
 * fields a place that there is not, a value that is no number, out of the measure's range, or what stands there.
 */
export const proposeAmendment = command({
  name: 'amendments.propose-amendment',
  input: proposeAmendmentInput,
  right: 'propose-amendment',
  async run({ tx, actor, now, input }) {
    const { bakeryId, personId, name } = actor
    const { hash, closing, amendments, standing } = await closedForAmending(tx, bakeryId, input.trialId)
    const dough = closing.doughs.find(({ id }) => id === input.doughId)
    const measure = closing.measures.find(({ id }) => id === input.measureId)
    if (!dough || !measure) throw new Refusal('not-found')
    if (dough.state === 'waiting') throw new Refusal('batch-not-begun')
    if (dough.state === 'not_baked') throw new Refusal('batch-not-baked')
    if (measure.derivation !== null) throw Refusal.at('measureId', 'measure-worked-out')
    const { factor, piecesPerBatch } = closing.declared
    const { piece, repeat } = input
    const factorLevel = piece === null ? null : levelOfPiece(piece, factor?.levels ?? [])
    mustBePlace({ piece, factorLevel }, measure, {
      piecesPerBatch,
      factorName: factor?.name ?? null,
      factorLevels: factor?.levels ?? [],
    })
    const place = { dough: dough.id, measure: measure.id, piece, factorLevel, repeat }
    const stands = readingAtPlace(standing, place)
    if (input.what === 'another' && !stands) throw new Refusal('no-such-closed-reading')
    if (input.what === 'missing') {
      if (stands) throw new Refusal('reading-closed-there')
      if (!takesRepeat(repeat, measure, readingsAt(standing, place)))
        throw new Refusal('no-further-repeat', { count: measure.repeats })
    }
    const value = enteredValue({ value: input.value, unit: measure.unit }, measure)
    const { plausibleLeast: least, plausibleMost: most } = measure
    if (value < least || value > most) throw Refusal.at('value', 'outside-measure', { least, most, unit: measure.unit })
    if (stands?.value === value) throw Refusal.at('value', 'stands-already')
    await mustNotBeProposed(
      tx,
      bakeryId,
      amendments.all,
      (change) =>
        change.kind === 'reading' &&
        change.dough.id === place.dough &&
        change.measure.id === place.measure &&
        change.piece === piece &&
        change.repeat === repeat,
    )
    const closed = readingAtPlace(closing, place)
    const { code, name: measureName, unit } = measure
    const proposal = await keepProposal(tx, {
      bakeryId,
      trialId: input.trialId,
      closing: hash,
      change: {
        kind: 'reading',
        dough: { id: dough.id, code: dough.code },
        measure: { id: measure.id, code, name: measureName, unit },
        piece,
        factorLevel,
        repeat,
        old: oldOf(closed),
        new: { value, valueEntered: input.value, unitEntered: unit },
        takenAt: null,
      },
      reason: input.reason,
      by: { id: personId, name },
      at: now,
      entry: null,
    })
    return {
      value: { amendmentId: proposal.amendment },
      audit: {
        target: input.trialId,
        before: closed && { value: closed.valueEntered, unit: closed.unitEntered },
        after: { ...proposal, dough: dough.code, measure: measureName, piece, repeat, value: input.value, unit },
        reason: input.reason,
      },
    }
  },
})
