import { mustBeWithin, mustHaveAtLeast, mustVary } from '../checks'
import { CalcError } from '../error'
import { fTail } from '../distributions/f-tail'
import type { AnovaRow } from './fit-additive'

export type SplitPlot = {
  method: 'balanced-split-plot'
  /** block, arm, batch (the error of arm), level, arm-by-level, piece (the error of level and interaction). */
  anova: [AnovaRow, AnovaRow, AnovaRow, AnovaRow, AnovaRow, AnovaRow]
  armMeans: { arm: string; mean: number }[]
  levelMeans: { level: string; mean: number }[]
  cellMeans: { arm: string; level: string; mean: number }[]
  /** Standard error of a difference between two arm means, on the batch stratum, and its degrees of freedom. */
  armDifferenceSe: number
  armDifferenceDf: number
  /** Of a difference between two level means, on the piece stratum. */
  levelDifferenceSe: number
  levelDifferenceDf: number
}

/**
 * One factor within batches: every arm is one batch in every block, every batch gives one piece to every level.
 * The arm is tested against batches (block × arm), the level and its interaction with the arm against pieces.
 * @param rows one per block, arm and level, all cells exactly once; 2 or more of each
 * @param arms the control first; @param levels in the order wanted
 * @throws CalcError 'not-finite' | 'empty'; 'wrong-shape' with reason 'missing-cell' | 'repeated-cell' | 'unknown-name';
 * 'not-possible' with reason 'zero-variance'
 * Source: Cochran & Cox (1957), section 7.1; Yates (1935).
 */
export function splitPlot(q: {
  rows: readonly { block: string; arm: string; level: string; y: number }[]
  arms: readonly string[]
  levels: readonly string[]
}): SplitPlot {
  const blocks = [...new Set(q.rows.map((row) => row.block))]
  mustHaveAtLeast('blocks', blocks, 2)
  mustHaveAtLeast('arms', q.arms, 2)
  mustHaveAtLeast('levels', q.levels, 2)
  const [b, a, l] = [blocks.length, q.arms.length, q.levels.length]
  const cells = cellsOf(q, blocks)
  const origin = cells[0]![0]![0]!
  const y = cells.map((arms) => arms.map((levels) => levels.map((value) => value - origin)))

  const all = y.flat(2)
  const grand = mean(all)
  const blockMean = y.map((arms) => mean(arms.flat()))
  const armMean = q.arms.map((_, j) => mean(y.flatMap((arms) => arms[j]!)))
  const levelMean = q.levels.map((_, k) => mean(y.flatMap((arms) => arms.map((levels) => levels[k]!))))
  const batchMean = y.map((arms) => arms.map(mean))
  const cellMean = q.arms.map((_, j) => q.levels.map((__, k) => mean(y.map((arms) => arms[j]![k]!))))

  const ssBlock = a * l * squares(blockMean.map((m) => m - grand))
  const ssArm = b * l * squares(armMean.map((m) => m - grand))
  const ssBatch = l * squares(batchMean.flatMap((row, i) => row.map((m, j) => m - blockMean[i]! - armMean[j]! + grand)))
  const ssLevel = a * b * squares(levelMean.map((m) => m - grand))
  const ssBoth = b * squares(cellMean.flatMap((row, j) => row.map((m, k) => m - armMean[j]! - levelMean[k]! + grand)))
  const ssPiece = squares(
    y.flatMap((arms, i) =>
      arms.flatMap((levels, j) => levels.map((v, k) => v - batchMean[i]![j]! - cellMean[j]![k]! + armMean[j]!)),
    ),
  )
  const dfBatch = (b - 1) * (a - 1)
  const dfPiece = a * (b - 1) * (l - 1)
  const largest = Math.max(...cells.flat(2).map(Math.abs))
  for (const [field, sumSquares, df] of [
    ['batch', ssBatch, dfBatch],
    ['piece', ssPiece, dfPiece],
  ] as const) {
    mustVary(field, Math.sqrt(sumSquares / df), largest)
  }
  const plain = (source: string, sumSquares: number, df: number): AnovaRow => {
    return { source, df, sumSquares, meanSquare: sumSquares / df, f: null, p: null }
  }
  const batch = plain('batch', ssBatch, dfBatch)
  const piece = plain('piece', ssPiece, dfPiece)
  const tested = (source: string, sumSquares: number, df: number, error: AnovaRow): AnovaRow => {
    const f = sumSquares / df / error.meanSquare
    return { ...plain(source, sumSquares, df), f, p: fTail({ f, df1: df, df2: error.df, tail: 'upper' }) }
  }
  return {
    method: 'balanced-split-plot',
    anova: [
      plain('block', ssBlock, b - 1),
      tested('arm', ssArm, a - 1, batch),
      batch,
      tested('level', ssLevel, l - 1, piece),
      tested('arm-by-level', ssBoth, (a - 1) * (l - 1), piece),
      piece,
    ],
    armMeans: q.arms.map((arm, j) => ({ arm, mean: origin + armMean[j]! })),
    levelMeans: q.levels.map((level, k) => ({ level, mean: origin + levelMean[k]! })),
    cellMeans: q.arms.flatMap((arm, j) =>
      q.levels.map((level, k) => ({ arm, level, mean: origin + cellMean[j]![k]! })),
    ),
    armDifferenceSe: Math.sqrt((2 * batch.meanSquare) / (b * l)),
    armDifferenceDf: dfBatch,
    levelDifferenceSe: Math.sqrt((2 * piece.meanSquare) / (a * b)),
    levelDifferenceDf: dfPiece,
  }
}

/** Values by block, arm, level. */
function cellsOf(
  q: {
    rows: readonly { block: string; arm: string; level: string; y: number }[]
    arms: readonly string[]
    levels: readonly string[]
  },
  blocks: readonly string[],
): number[][][] {
  const cells = blocks.map(() => q.arms.map(() => new Array<number>(q.levels.length).fill(NaN)))
  q.rows.forEach((row, i) => {
    const [j, k] = [q.arms.indexOf(row.arm), q.levels.indexOf(row.level)]
    if (j < 0 || k < 0)
      throw new CalcError('wrong-shape', {
        field: `rows[${i}]`,
        value: `${row.arm} ${row.level}`,
        reason: 'unknown-name',
      })
    const batch = cells[blocks.indexOf(row.block)]![j]!
    if (!Number.isNaN(batch[k])) throw new CalcError('wrong-shape', { field: `rows[${i}]`, reason: 'repeated-cell' })
    batch[k] = mustBeWithin(`rows[${i}].y`, row.y)
  })
  if (cells.flat(2).some(Number.isNaN))
    throw new CalcError('wrong-shape', { field: 'rows', value: q.rows.length, reason: 'missing-cell' })
  return cells
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}

function squares(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value * value, 0)
}
