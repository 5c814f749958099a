import { expect, test } from 'vitest'
import { CalcError } from '@/lib/calc/error'
import { scoresByTaster } from '@/lib/calc/panel/scores-by-taster'
import { scoresOf } from '../../../support/panel-scores'

const reasonOf = (scores: Parameters<typeof scoresByTaster>[0]) => {
  try {
    scoresByTaster(scores)
  } catch (error) {
    return error instanceof CalcError ? [error.code, error.facts.reason, error.facts.field] : error
  }
  return null
}

test('rows and columns are in the order in which they come first, in whatever order the scores are', () => {
  const scores = scoresOf([
    [1, 2],
    [4, 3],
  ])
  expect(scoresByTaster(scores)).toEqual({
    tasters: ['taster 1', 'taster 2'],
    samples: ['A', 'B'],
    rows: [
      [1, 2],
      [4, 3],
    ],
  })
  expect(scoresByTaster(scores.toReversed()).rows).toEqual([
    [3, 4],
    [2, 1],
  ])
})

test('what is there twice or missing is named', () => {
  const scores = scoresOf([
    [1, 2],
    [4, 3],
    [5, 6],
  ])
  expect(reasonOf([...scores, scores[0]!])).toEqual(['duplicate', 'tasted-twice', 'scores[6].sample'])
  expect(reasonOf(scores.slice(1))).toEqual(['wrong-shape', 'sample-not-tasted', 'scores'])
})

test('one taster, one sample, no scores, too many samples and no number are refused', () => {
  expect(reasonOf(scoresOf([[1, 2, 3, 4]]))).toEqual(['empty', 'one-taster', 'scores'])
  expect(reasonOf(scoresOf([[1], [2], [3], [4]]))).toEqual(['empty', 'one-sample', 'scores'])
  expect(reasonOf([])).toEqual(['empty', undefined, 'scores'])
  const wide = Array.from({ length: 51 }, (_, i) => i)
  expect(reasonOf(scoresOf([wide, wide]))).toEqual(['out-of-range', 'too-many-samples', 'scores'])
  expect(
    reasonOf(
      scoresOf([
        [1, NaN],
        [1, 2],
      ]),
    ),
  ).toEqual(['not-finite', undefined, 'scores[1].score'])
})

test('no name of a taster is taken for something else', () => {
  const names = ['constructor', '__proto__']
  const scores = names.flatMap((taster) => names.map((sample, i) => ({ taster, sample, score: i })))
  expect(scoresByTaster(scores)).toMatchObject({
    tasters: names,
    rows: [
      [0, 1],
      [0, 1],
    ],
  })
})
