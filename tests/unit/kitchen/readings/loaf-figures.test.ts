import { describe, expect, it } from 'vitest'
import { loafFigures, type FigureMeasure, type FigureReading } from '@/lib/kitchen/readings/loaf-figures'
import { valuesOfMeasure } from '@/lib/kitchen/readings/values-of-measure'

const measure = (code: string, repeats = 1): FigureMeasure => ({ id: `m-${code}`, code, repeats, repeatLimit: null })
const measures = [
  measure('dough-temp'),
  measure('dough-mass'),
  measure('loaf-mass'),
  measure('loaf-volume', 2),
  { id: 'own', code: null, repeats: 1, repeatLimit: null },
]
const read = (
  code: string,
  piece: number | null,
  value: number,
  repeat = 1,
  batchId = 'b1',
  factorLevel: string | null = null,
): FigureReading => ({
  batchId,
  measureId: code === 'own' ? 'own' : `m-${code}`,
  piece,
  factorLevel,
  repeat,
  value,
})

describe('the figures of a batch', () => {
  const [batch] = loafFigures({
    measures,
    readings: [
      read('dough-temp', null, 26.1),
      read('dough-mass', 1, 480),
      read('loaf-mass', 1, 420),
      read('loaf-volume', 1, 1910, 2),
      read('loaf-volume', 1, 1890, 1),
      read('dough-mass', 2, 480),
      read('loaf-mass', 2, 425),
      read('loaf-volume', 2, 1700, 1),
      read('loaf-volume', 2, 1800, 2),
      read('own', 1, 7),
    ],
  })

  it('are worked out for each piece from the mean of its repeats', () => {
    // Worked by hand: 1900 / 420 and 1 - 420 / 480.
    expect(batch?.pieces[0]?.figures).toMatchObject({ 'dough-mass': 480, 'loaf-mass': 420, 'loaf-volume': 1900 })
    expect(batch?.pieces[0]?.figures['specific-volume']).toBeCloseTo(4.5238, 4)
    expect(batch?.pieces[0]?.figures['bake-loss']).toBeCloseTo(12.5, 10)
    expect(batch?.pieces[0]?.settled).toBe(true)
  })

  it('say where two readings ask for a third', () => {
    expect(batch?.pieces[1]?.read.get('m-loaf-volume')).toMatchObject({ needs: 'third', value: 1750 })
    expect(batch?.pieces[1]?.settled).toBe(false)
  })

  it('are brought together over the pieces', () => {
    expect(batch?.means['loaf-mass']).toMatchObject({ mean: 422.5, n: 2 })
    expect(batch?.means['loaf-mass']?.sd).toBeCloseTo(5 / Math.SQRT2, 12)
    expect(batch?.read.get('m-dough-temp')).toMatchObject({ value: 26.1, settled: true })
  })

  it('can be had by measure, read or worked out', () => {
    const values = (code: string | null, id: string, level: 'batch' | 'piece') =>
      valuesOfMeasure(batch!, { id, code, level }).map(({ piece, value }) => [piece, Number(value.toFixed(3))])
    expect(values('specific-volume', 'm-specific-volume', 'piece')).toEqual([
      [1, 4.524],
      [2, 4.118],
    ])
    expect(values('dough-temp', 'm-dough-temp', 'batch')).toEqual([[null, 26.1]])
    expect(values(null, 'own', 'piece')).toEqual([[1, 7]])
    expect(values('dough-temp', 'other', 'batch')).toEqual([])
  })
})

it('a figure is left out where a reading is missing, or a loaf weighs more than its dough', () => {
  const [batch] = loafFigures({
    measures,
    readings: [read('dough-mass', 1, 400), read('loaf-mass', 1, 420), read('loaf-mass', 2, 400)],
  })
  expect(batch?.pieces.map(({ figures }) => figures)).toEqual([
    { 'dough-mass': 400, 'loaf-mass': 420, 'loaf-volume': null, 'specific-volume': null, 'bake-loss': null },
    { 'dough-mass': null, 'loaf-mass': 400, 'loaf-volume': null, 'specific-volume': null, 'bake-loss': null },
  ])
  expect(batch?.means['specific-volume']).toBeNull()
})

it('batches and levels of a factor are kept apart', () => {
  const batches = loafFigures({
    measures,
    readings: [
      read('loaf-mass', 1, 400, 1, 'b1', 'day 1'),
      read('loaf-mass', 1, 390, 1, 'b1', 'day 3'),
      read('loaf-mass', 1, 380, 1, 'b2'),
    ],
  })
  expect(
    batches.map(({ batchId, pieces }) => [
      batchId,
      pieces.map(({ factorLevel, figures }) => [factorLevel, figures['loaf-mass']]),
    ]),
  ).toEqual([
    [
      'b1',
      [
        ['day 1', 400],
        ['day 3', 390],
      ],
    ],
    ['b2', [[null, 380]]],
  ])
})

it('nothing read is no batch', () => {
  expect(loafFigures({ readings: [], measures })).toEqual([])
})
