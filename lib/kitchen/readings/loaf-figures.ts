import 'server-only'
import { groupBy } from '../../calc/group-by'
import { loafLosses } from '../../calc/loaf/loaf-losses'
import { specificVolumeMlPerG } from '../../calc/loaf/specific-volume'
import { summariseReadings } from '../../calc/loaf/summarise-readings'
import { settleRepeats, type SettledReading } from './settle-repeats.input'

/** A reading that holds: out of `currentReadings`. */
export type FigureReading = {
  batchId: string
  measureId: string
  piece: number | null
  factorLevel: string | null
  repeat: number
  value: number
}
export type FigureMeasure = { id: string; code: string | null; repeats: number; repeatLimit: number | null }

/** The figures of a loaf by the standard measures' codes; null while a reading is missing, or makes no sense. */
export type LoafFigures = {
  'dough-mass': number | null
  'loaf-mass': number | null
  'loaf-volume': number | null
  'specific-volume': number | null
  'bake-loss': number | null
}
export type LoafFigureCode = keyof LoafFigures

export type PieceFigures = {
  piece: number
  factorLevel: string | null
  /** Every measure that was read on this piece, by the measure's id. */
  read: ReadonlyMap<string, SettledReading>
  /** Dough and loaf weight in g, volume in mL, specific volume in mL/g, bake loss in % of the dough weight. */
  figures: LoafFigures
  /** False while a reading behind a figure is still to come. */
  settled: boolean
}

export type BatchFigures = {
  batchId: string
  /** Measures of the whole batch, by the measure's id. */
  read: ReadonlyMap<string, SettledReading>
  /** By piece, then by factor level. */
  pieces: readonly PieceFigures[]
  /** Mean over the pieces that have the figure, their number and their standard deviation (divisor n − 1). */
  means: Record<LoafFigureCode, { mean: number; n: number; sd: number | null } | null>
}

/** The codes of the figures, in the order in which they come about. */
export const loafFigureCodes = [
  'dough-mass',
  'loaf-mass',
  'loaf-volume',
  'specific-volume',
  'bake-loss',
] as const satisfies readonly LoafFigureCode[]

/**
 * What the readings of batches say: repeats brought together, specific volume and bake loss worked out for each piece,
 * and the batch's means. Batches, not pieces, are the units to compare.
 * @param readings those that hold, of any number of batches
 * @param measures at least those of the readings; others are left alone
 */
export function loafFigures(q: {
  readings: readonly FigureReading[]
  measures: readonly FigureMeasure[]
}): BatchFigures[] {
  const measures = new Map(q.measures.map((measure) => [measure.id, measure]))
  return [...groupBy(q.readings, ({ batchId }) => batchId)].map(([batchId, ofBatch]) => {
    const ofPieces = groupBy(
      ofBatch.filter(({ piece }) => piece !== null),
      ({ piece, factorLevel }) => `${piece} ${factorLevel ?? ''}`,
    )
    const pieces = [...ofPieces.values()].map((readings) => figuresOfPiece(readings, measures)).sort(byPiece)
    return {
      batchId,
      read: settle(
        ofBatch.filter(({ piece }) => piece === null),
        measures,
      ),
      pieces,
      means: meansOf(pieces),
    }
  })
}

function figuresOfPiece(
  readings: readonly FigureReading[],
  measures: ReadonlyMap<string, FigureMeasure>,
): PieceFigures {
  const read = settle(readings, measures)
  const byCode = new Map([...read].map(([id, settled]) => [measures.get(id)?.code, settled.value]))
  const [doughMassG, loafMassG, volumeMl] = [
    byCode.get('dough-mass') ?? null,
    byCode.get('loaf-mass') ?? null,
    byCode.get('loaf-volume') ?? null,
  ]
  return {
    piece: readings[0]?.piece ?? 0,
    factorLevel: readings[0]?.factorLevel ?? null,
    read,
    figures: {
      'dough-mass': doughMassG,
      'loaf-mass': loafMassG,
      'loaf-volume': volumeMl,
      'specific-volume': specificVolumeOf(volumeMl, loafMassG),
      'bake-loss': bakeLossPctOf(doughMassG, loafMassG),
    },
    settled: [...read.values()].every(({ settled }) => settled),
  }
}

function specificVolumeOf(volumeMl: number | null, massG: number | null): number | null {
  return volumeMl !== null && massG !== null && volumeMl > 0 && massG > 0
    ? specificVolumeMlPerG({ volumeMl, massG })
    : null
}

/** The cooled loaf is the only one weighed, so the loss has cooling in it. */
function bakeLossPctOf(doughMassG: number | null, loafMassG: number | null): number | null {
  if (doughMassG === null || loafMassG === null || loafMassG <= 0 || loafMassG > doughMassG) return null
  return 100 * loafLosses({ doughMassG, hotMassG: loafMassG, cooledMassG: loafMassG }).totalLossShare
}

function settle(
  readings: readonly FigureReading[],
  measures: ReadonlyMap<string, FigureMeasure>,
): Map<string, SettledReading> {
  const settled = new Map<string, SettledReading>()
  for (const [measureId, repeats] of groupBy(readings, (reading) => reading.measureId)) {
    const measure = measures.get(measureId)
    if (!measure) continue
    const values = [...repeats].sort((a, b) => a.repeat - b.repeat).map(({ value }) => value)
    settled.set(measureId, settleRepeats({ values, repeats: measure.repeats, repeatLimit: measure.repeatLimit }))
  }
  return settled
}

function meansOf(pieces: readonly PieceFigures[]): BatchFigures['means'] {
  const mean = (code: LoafFigureCode) => {
    const values = pieces.flatMap(({ figures }) => figures[code] ?? [])
    if (values.length === 0) return null
    const { mean, n, sd } = summariseReadings(values)
    return { mean, n, sd }
  }
  return {
    'dough-mass': mean('dough-mass'),
    'loaf-mass': mean('loaf-mass'),
    'loaf-volume': mean('loaf-volume'),
    'specific-volume': mean('specific-volume'),
    'bake-loss': mean('bake-loss'),
  }
}

function byPiece(a: PieceFigures, b: PieceFigures): number {
  return a.piece - b.piece || (a.factorLevel ?? '').localeCompare(b.factorLevel ?? '', 'en')
}
