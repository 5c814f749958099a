import { mustBeWithin, mustHaveAtLeast } from '../checks'
import { CalcError } from '../error'
import type { ScoreRow } from './types'

const MOST_SAMPLES = 50

/**
 * Scores as a table: a row for each taster, a column for each sample, both in the order in which they come first.
 * @param scores each taster once for each sample; at least two tasters and two samples, at most 50 samples
 * @returns rows[taster][sample]
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range' | 'duplicate' with reason 'tasted-twice' |
 * 'wrong-shape' with reason 'sample-not-tasted'
 */
export function scoresByTaster(scores: readonly ScoreRow[]): {
  tasters: string[]
  samples: string[]
  rows: number[][]
} {
  mustHaveAtLeast('scores', scores, 4)
  const table = new Map<string, Map<string, number>>()
  const samples = new Set<string>()
  scores.forEach(({ taster, sample, score }, i) => {
    mustBeWithin(`scores[${i}].score`, score)
    const row = table.get(taster) ?? new Map<string, number>()
    if (row.has(sample))
      throw new CalcError('duplicate', { field: `scores[${i}].sample`, value: sample, reason: 'tasted-twice' })
    table.set(taster, row.set(sample, score))
    samples.add(sample)
  })
  if (table.size < 2) throw new CalcError('empty', { field: 'scores', value: table.size, min: 2, reason: 'one-taster' })
  if (samples.size < 2)
    throw new CalcError('empty', { field: 'scores', value: samples.size, min: 2, reason: 'one-sample' })
  if (samples.size > MOST_SAMPLES)
    throw new CalcError('out-of-range', {
      field: 'scores',
      value: samples.size,
      max: MOST_SAMPLES,
      reason: 'too-many-samples',
    })
  const rows = [...table].map(([taster, row]) =>
    [...samples].map((sample) => {
      const score = row.get(sample)
      if (score === undefined)
        throw new CalcError('wrong-shape', {
          field: 'scores',
          value: `${taster}: ${sample}`,
          reason: 'sample-not-tasted',
        })
      return score
    }),
  )
  return { tasters: [...table.keys()], samples: [...samples], rows }
}
