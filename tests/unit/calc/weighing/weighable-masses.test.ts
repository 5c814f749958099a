import fc from 'fast-check'
import { expect, test } from 'vitest'
import { weighableMassesG } from '@/lib/calc/weighing/weighable-masses'

const scales = [
  { id: 'fine', resolutionG: 0.1, capacityG: 2, uncertaintyG: 0.05 },
  { id: 'coarse', resolutionG: 1, capacityG: 8, uncertaintyG: 0.5 },
]

test('every mark of the scale that carries the mass, without binary dust', () =>
  expect(weighableMassesG({ scales, leastG: 1.65, mostG: 6, mostPerScale: 100 })).toEqual([
    1.7, 1.8, 1.9, 2, 3, 4, 5, 6,
  ]))

test('a mark that is just the least mass belongs to it, none beyond is there', () => {
  expect(weighableMassesG({ scales, leastG: 0.3, mostG: 0.5, mostPerScale: 100 })).toEqual([0.3, 0.4, 0.5])
  expect(weighableMassesG({ scales, leastG: 9, mostG: 20, mostPerScale: 100 })).toEqual([])
  expect(weighableMassesG({ scales, leastG: 3, mostG: -1, mostPerScale: 100 })).toEqual([])
})

test('thinned, they keep first and last, rise, and are no more than asked for', () =>
  fc.assert(
    fc.property(
      fc.integer({ min: 2, max: 50 }),
      fc.double({ min: 0.1, max: 900, noNaN: true }),
      (mostPerScale, leastG) => {
        const one = [{ id: 'a', resolutionG: 0.01, capacityG: 1000, uncertaintyG: 0.01 }]
        const all = weighableMassesG({ scales: one, leastG, mostG: 1000, mostPerScale: 1e6 })
        const some = weighableMassesG({ scales: one, leastG, mostG: 1000, mostPerScale })
        expect(some.length).toBeLessThanOrEqual(mostPerScale)
        expect([some[0], some.at(-1)]).toEqual([all[0], all.at(-1)])
        expect(some).toEqual([...new Set(some)].sort((a, b) => a - b))
      },
    ),
  ))
