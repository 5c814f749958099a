import { mustBeReading, mustBeWithin, mustHaveAtLeast, mustVary } from '../checks'
import { CalcError } from '../error'
import { type Component, varianceComponent } from '../analysis/variance-component'
import { chiSquaredQuantile } from '../distributions/chi-squared-quantile'
import { groupBy } from '../group-by'
import { summariseValues } from './summarise-values'

export type ReaderVariation = {
  method: 'crossed-anova-moments'
  grandMean: number
  loaf: Component
  reader: Component
  /** Readers who differ in another way on each loaf. */
  readerByLoaf: Component
  /** One reader, one loaf, read again; with its chi-squared interval. */
  repeat: Component & { low: number; high: number }
  confidence: number
  /** Of a single reading by any reader, apart from the loaf. */
  readingSd: number
  /** Its share of the variance of single readings, 0 to 1. */
  readingShare: number
}

/**
 * How much of the spread comes from who reads: every reader reads every loaf equally often, twice or more.
 * @param rows loaf, reader and value in the measure's own unit; two loaves and two readers or more
 * @param confidence of the interval of the repeat SD, 0.5 to 0.9999
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range'; 'wrong-shape' with reason 'uneven-readings' and the cell;
 * 'not-possible' with reason 'one-reading-per-cell' or 'zero-variance'
 * Source: Montgomery & Runger (1993), Quality Engineering 6; Searle (1971), Linear Models, section 9.7 (ANOVA estimators).
 */
export function readerVariation(q: {
  rows: readonly { loaf: string; reader: string; y: number }[]
  confidence: number
}): ReaderVariation {
  const confidence = mustBeWithin('confidence', q.confidence, { min: 0.5, max: 0.9999 })
  mustHaveAtLeast('rows', q.rows, 1)
  q.rows.forEach(({ y }, i) => mustBeReading(`rows[${i}].y`, y))
  const origin = q.rows[0]!.y
  const summarise = (rows: readonly { y: number }[]) =>
    summariseValues(
      'rows',
      rows.map(({ y }) => y),
      origin,
    )
  const loaves = groupBy(q.rows, (row) => row.loaf)
  const readers = groupBy(q.rows, (row) => row.reader)
  const [l, k] = [loaves.size, readers.size]
  mustHaveAtLeast('loaves', [...loaves], 2)
  mustHaveAtLeast('readers', [...readers], 2)
  const repeats = q.rows.length / (l * k)
  const cells = [...loaves].flatMap(([loaf, rows]) => {
    const byReader = groupBy(rows, (row) => row.reader)
    return [...readers.keys()].map((reader) => {
      const cell = byReader.get(reader) ?? []
      if (cell.length !== repeats) {
        throw new CalcError('wrong-shape', {
          field: 'rows',
          value: `${loaf} ${reader}`,
          min: repeats,
          max: repeats,
          reason: 'uneven-readings',
        })
      }
      return { loaf, reader, ...summarise(cell) }
    })
  })
  if (repeats < 2)
    throw new CalcError('not-possible', { field: 'rows', value: repeats, reason: 'one-reading-per-cell' })

  const whole = summarise(q.rows)
  const offsets = (groups: ReadonlyMap<string, readonly { y: number }[]>) =>
    new Map([...groups].map(([name, rows]) => [name, summarise(rows).offset]))
  const [ofLoaf, ofReader] = [offsets(loaves), offsets(readers)]
  const spread = (means: ReadonlyMap<string, number>) =>
    [...means.values()].reduce((sum, mean) => sum + (mean - whole.offset) ** 2, 0)
  const [dfLoaf, dfReader, dfBoth, dfRepeat] = [l - 1, k - 1, (l - 1) * (k - 1), l * k * (repeats - 1)]
  const msLoaf = (repeats * k * spread(ofLoaf)) / dfLoaf
  const msReader = (repeats * l * spread(ofReader)) / dfReader
  const left = cells.reduce(
    (sum, cell) => sum + (cell.offset - ofLoaf.get(cell.loaf)! - ofReader.get(cell.reader)! + whole.offset) ** 2,
    0,
  )
  const msBoth = (repeats * left) / dfBoth
  const ssRepeat = cells.reduce((sum, cell) => sum + cell.sumSquares, 0)
  const msRepeat = ssRepeat / dfRepeat
  mustVary(
    'rows',
    Math.sqrt(msRepeat),
    q.rows.reduce((most, { y }) => Math.max(most, Math.abs(y)), 0),
  )

  const loaf = varianceComponent((msLoaf - msBoth) / (repeats * k), dfLoaf)
  const reader = varianceComponent((msReader - msBoth) / (repeats * l), dfReader)
  const readerByLoaf = varianceComponent((msBoth - msRepeat) / repeats, dfBoth)
  const limit = (tail: 'lower' | 'upper') =>
    Math.sqrt(ssRepeat / chiSquaredQuantile({ p: (1 - confidence) / 2, df: dfRepeat, tail }))
  const readingVariance = reader.sd ** 2 + readerByLoaf.sd ** 2 + msRepeat
  return {
    method: 'crossed-anova-moments',
    grandMean: whole.mean,
    loaf,
    reader,
    readerByLoaf,
    repeat: { ...varianceComponent(msRepeat, dfRepeat), low: limit('upper'), high: limit('lower') },
    confidence,
    readingSd: Math.sqrt(readingVariance),
    readingShare: readingVariance / (readingVariance + loaf.sd ** 2),
  }
}
