import fc from 'fast-check'
import { expect, it } from 'vitest'
import { currentReadings } from '@/lib/kitchen/readings/current-readings'
import { forLong } from '@/tests/support/long'

const at = (second: number) => new Date(Date.UTC(2026, 2, 2, 4, 0, second))
const reading = (id: string, supersedesId: string | null = null, second = 0) => ({
  id,
  supersedesId,
  receivedAt: at(second),
})
const idsOf = (readings: readonly { id: string; supersedesId: string | null; receivedAt: Date }[]) =>
  currentReadings(readings).map(({ id }) => id)

it('keeps readings that nobody corrected, in their order', () => {
  expect(idsOf([reading('a'), reading('b')])).toEqual(['a', 'b'])
})

it('puts a correction, and the correction of it, in the place of the first', () => {
  expect(idsOf([reading('a'), reading('b'), reading('a2', 'a', 1), reading('a3', 'a2', 2)])).toEqual(['a3', 'b'])
})

it('lets the later received of two corrections stand, and with it what follows from it', () => {
  expect(idsOf([reading('a'), reading('x', 'a', 2), reading('y', 'a', 1), reading('y2', 'y', 3)])).toEqual(['x'])
  expect(idsOf([reading('a'), reading('x', 'a', 1), reading('y', 'a', 1)])).toEqual(['y'])
})

it('counts one whose predecessor is not there as the first', () => {
  expect(idsOf([reading('b', 'elsewhere')])).toEqual(['b'])
})

it('gives one reading for each that was first entered, in whatever order they come', () => {
  fc.assert(
    fc.property(fc.array(fc.nat({ max: 30 }), { minLength: 1, maxLength: 30 }), fc.integer(), (parents, turn) => {
      // Reading i corrects one before it, or is a first entry.
      const all = parents.map((parent, i) =>
        reading(`r${String(i).padStart(2, '0')}`, parent < i ? `r${String(parent).padStart(2, '0')}` : null, i),
      )
      const turned = all.map((_, i) => all[(i + Math.abs(turn)) % all.length]!)
      const firsts = all.filter(({ supersedesId }) => supersedesId === null).length
      expect(currentReadings(turned)).toHaveLength(firsts)
      expect(idsOf(turned).sort()).toEqual(idsOf(all).sort())
    }),
    { seed: 7, numRuns: forLong(200, 4_000) },
  )
})
