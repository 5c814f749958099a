import { expect, it } from 'vitest'
import { missingReadings } from '@/lib/kitchen/readings/missing-readings'
import { standardMeasures } from '@/lib/kitchen/readings/standard-measures'

const own = { id: 'own', code: null, level: 'piece' as const, derivation: null, repeats: 1 }
const measures = [...standardMeasures.map((measure) => ({ ...measure, id: measure.code })), own]
const missing = (decidingMeasureId: string, readings: { measureId: string; piece: number | null; repeat: number }[] = [], pieces = 2) =>
  missingReadings({ measures, decidingMeasureId, pieces, readings }).map(({ measureId, have, of }) => `${measureId} ${have}/${of}`)

it('asks for what says what else differed, and for what the trial’s measure is worked out of', () => {
  expect(missing('specific-volume')).toEqual(['water-added 0/1', 'dough-temp 0/1', 'proof-time 0/1', 'loaf-mass 0/2', 'loaf-volume 0/4'])
  expect(missing('bake-loss')).toEqual(['water-added 0/1', 'dough-temp 0/1', 'proof-time 0/1', 'dough-mass 0/2', 'loaf-mass 0/2'])
  expect(missing('own').at(-1)).toBe('own 0/2')
})

it('counts each place once, and only places that are to be read', () => {
  const volume = (piece: number, repeat: number) => ({ measureId: 'loaf-volume', piece, repeat })
  expect(missing('loaf-volume', [volume(1, 1), volume(1, 1), volume(1, 3), volume(3, 1)]).at(-1)).toBe('loaf-volume 1/4')
  expect(missing('loaf-volume', [volume(1, 1), volume(1, 2), volume(2, 1), volume(2, 2)])).not.toContainEqual(expect.stringContaining('loaf-volume'))
})
