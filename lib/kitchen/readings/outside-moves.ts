import 'server-only'
import type { BatchState } from '../../db/generated/enums'
import { byTurn, isOver, needsCleanDown, type MixedBatch } from '../batches/rules'
import { currentReadings } from './current-readings'
import type { ImportBatch, ImportFacts } from './import/load-import-facts'
import { gapsOfBatch, type GapReading } from './gaps-of-batch'
import type { ImportedDough } from './import/place-rows'
import type { ImportedReading } from './import/read-import'

export type OutsideMove = {
  batchId: string
  code: string
  revision: number
  from: BatchState
  to: 'baked' | 'measured'
  begunAt: Date
  doneAt: Date | null
  piecesMade: number | null
  piecesGood: number | null
}

export type OutsideMoves = {
  moves: OutsideMove[]
  /** Codes of doughs before which bench and bowl had to be cleaned down. */
  cleanDown: string[]
  /** The first waiting dough that the drawn order has before one of these, and that is not among them. */
  skipped: string | null
}

/**
 * What becomes of doughs that were baked outside the shift: measured when every piece has the readings that the
 * trial's measure rests on and none of them is odd or unsettled, which asks for a person's word; baked otherwise. What
 * is over already, or measured, is left as it is.
 * @param mixed all batches of the trial
 */
export function outsideMoves(q: {
  facts: ImportFacts
  doughs: readonly ImportedDough[]
  fresh: readonly ImportedReading[]
  mixed: readonly (MixedBatch & { code: string })[]
}): OutsideMoves {
  const { facts, mixed } = q
  const holding = [
    ...currentReadings(facts.readings),
    ...q.fresh.map(({ range, ...reading }) => ({ ...reading, plausibleLeast: range.least, plausibleMost: range.most })),
  ]
  const moves = q.doughs.flatMap(({ batch, first, last, good }): OutsideMove[] => {
    if (isOver(batch.state)) return []
    const isWhole = isReadWhole(
      facts,
      batch,
      holding.filter(({ batchId }) => batchId === batch.id),
    )
    if (!isWhole && batch.state === 'baked') return []
    const made = batch.piecesMade ?? (isWhole ? facts.trial.piecesPerBatch : null)
    return [
      {
        batchId: batch.id,
        code: batch.code,
        revision: batch.revision,
        from: batch.state,
        to: isWhole ? 'measured' : 'baked',
        begunAt: batch.begunAt ?? first,
        doneAt: isWhole ? last : null,
        piecesMade: made,
        // The pieces that were read are there to be read, so they count as good where nothing else is said.
        piecesGood: made === null ? null : (good ?? batch.piecesGood ?? made),
      },
    ]
  })
  const begun = new Set(moves.filter(({ from }) => from === 'waiting').map(({ batchId }) => batchId))
  const begins = mixed.filter(({ id }) => begun.has(id)).sort(byTurn)

  const latest = begins.at(-1)
  const [skipped] = latest
    ? mixed
        .filter(({ id, state }) => state === 'waiting' && !begun.has(id))
        .filter((batch) => byTurn(batch, latest) < 0)
        .sort(byTurn)
    : []
  return {
    moves,
    cleanDown: begins.filter((batch, i) => needsCleanDown(batch, mixed, begins[i - 1])).map(({ code }) => code),
    skipped: skipped?.code ?? null,
  }
}

function isReadWhole(
  { measures, trial, toSettle }: ImportFacts,
  { id: batchId, piecesMade }: ImportBatch,
  readings: readonly GapReading[],
): boolean {
  const gaps = gapsOfBatch({
    measures,
    decidingMeasureId: trial.measureId,
    piecesPerBatch: trial.piecesPerBatch,
    piecesMade,
    readings,
    toSettle: toSettle.get(batchId) ?? 0,
  })
  // What every dough is read for besides, such as its temperature, says what else differed and may be missing.
  return gaps.every(
    (gap) =>
      gap.kind === 'missing' &&
      gap.measure.id !== trial.measureId &&
      measures.find(({ id }) => id === gap.measure.id)?.level === 'batch',
  )
}
