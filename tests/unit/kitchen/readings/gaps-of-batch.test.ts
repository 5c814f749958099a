import { describe, expect, it } from 'vitest'
import { gapsOfBatch, type Gap, type GapReading } from '@/lib/kitchen/readings/gaps-of-batch'
import { standardMeasures } from '@/lib/kitchen/stores/standard-measures'

const own = {
  code: 'own',
  name: 'Own',
  unit: 'points',
  digits: 0,
  level: 'piece' as const,
  derivation: null,
  repeats: 1,
  least: 0,
  most: 10,
}
const measures = [...standardMeasures, own].map(({ least, most, ...measure }) => ({
  ...measure,
  id: measure.code,
  code: measure.code === 'own' ? null : measure.code,
  repeatLimit: null,
  plausibleLeast: least,
  plausibleMost: most,
}))

type Read = Partial<GapReading> & { measureId: string }
const reading = (read: Read): GapReading => ({
  id: JSON.stringify(read),
  piece: 1,
  factorLevel: null,
  repeat: 1,
  value: 400,
  plausibleLeast: null,
  plausibleMost: null,
  ...read,
})
const gapsOf = (
  decidingMeasureId: string,
  readings: Read[] = [],
  change: { piecesMade?: number | null; toSettle?: number } = {},
) =>
  gapsOfBatch({
    measures,
    decidingMeasureId,
    piecesPerBatch: 2,
    piecesMade: null,
    readings: readings.map(reading),
    toSettle: 0,
    ...change,
  })
const textOf = (gap: Gap) => {
  switch (gap.kind) {
    case 'fewer-pieces':
      return `pieces ${gap.have}/${gap.of}`
    case 'missing':
      return `${gap.measure.id} ${gap.have}/${gap.of}`
    case 'unsettled':
      return `${gap.measure.id} ${gap.piece} unsettled`
    case 'outside':
      return `${gap.measure.id} ${gap.piece} ${gap.value} outside ${gap.least} to ${gap.most}`
    case 'to-settle':
      return `${gap.count} to settle`
  }
}
const missing = (...asked: Parameters<typeof gapsOf>) =>
  gapsOf(...asked)
    .filter(({ kind }) => kind === 'missing')
    .map(textOf)

describe('what is missing', () => {
  it('is what says what else differed, and what the trial’s measure is worked out of', () => {
    expect(missing('specific-volume')).toEqual([
      'water-added 0/1',
      'dough-temp 0/1',
      'proof-time 0/1',
      'loaf-mass 0/2',
      'loaf-volume 0/4',
    ])
    expect(missing('bake-loss')).toEqual([
      'water-added 0/1',
      'dough-temp 0/1',
      'proof-time 0/1',
      'dough-mass 0/2',
      'loaf-mass 0/2',
    ])
    expect(missing('own').at(-1)).toBe('own 0/2')
  })

  it('counts each place once, and only places that are to be read', () => {
    const volume = (piece: number, repeat: number) => ({ measureId: 'loaf-volume', piece, repeat })
    expect(missing('loaf-volume', [volume(1, 1), volume(1, 1), volume(1, 3), volume(3, 1)]).at(-1)).toBe(
      'loaf-volume 1/4',
    )
    expect(missing('loaf-volume', [volume(1, 1), volume(1, 2), volume(2, 1), volume(2, 2)])).not.toContainEqual(
      expect.stringContaining('loaf-volume'),
    )
  })

  it('is never hidden by a count of fewer pieces', () => {
    expect(gapsOf('loaf-mass', [], { piecesMade: 0 }).map(textOf)[0]).toBe('pieces 0/2')
    expect(gapsOf('loaf-mass', [], { piecesMade: 5 }).map(textOf)).not.toContainEqual(expect.stringContaining('pieces'))
  })
})

describe('what is unsettled or odd', () => {
  const faults = (readings: Read[]) =>
    gapsOf('bake-loss', readings)
      .filter(({ kind }) => kind !== 'missing')
      .map(textOf)

  it('is a third reading that is asked for and not taken, of whatever measure', () => {
    const volume = (repeat: number, value: number) => ({ measureId: 'loaf-volume', repeat, value })
    expect(faults([volume(1, 1900), volume(2, 1990)])).toEqual(['loaf-volume 1 unsettled'])
    expect(faults([volume(1, 1900), volume(2, 1905)])).toEqual([])
    expect(faults([volume(1, 1900), volume(2, 1990), volume(3, 1910)])).toEqual([])
    expect(faults([volume(1, 1900)])).toEqual([])
  })

  it('is a reading outside the range that it was judged by, or its measure’s own where it has none', () => {
    expect(faults([{ measureId: 'loaf-mass', value: 721, plausibleLeast: 240, plausibleMost: 720 }])).toEqual([
      'loaf-mass 1 721 outside 240 to 720',
    ])
    expect(faults([{ measureId: 'dough-temp', piece: null, value: 600 }])).toEqual([
      'dough-temp null 600 outside 10 to 40',
    ])
    expect(faults([{ measureId: 'loaf-mass', value: 7000, plausibleLeast: 4000, plausibleMost: 12_000 }])).toEqual([])
  })
})

it('what is kept aside is told behind everything else', () => {
  expect(gapsOf('loaf-mass', [], { toSettle: 2 }).map(textOf).at(-1)).toBe('2 to settle')
  expect(gapsOf('loaf-mass').map(textOf)).not.toContainEqual(expect.stringContaining('to settle'))
})
