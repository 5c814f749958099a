import fc from 'fast-check'
import { expect, it } from 'vitest'
import { dueByAge, offAge } from '@/lib/kitchen/readings/due-by-age.input'

const hour = 60 * 60_000
const baked = Date.parse('2026-03-02T05:00:00Z')
const at = (hours: number) => baked + hours * hour

it('a loaf that is weighed cooled is due from its first hour, and late after its third', () => {
  const cooled = { ageLeastH: 1, ageMostH: 3 }
  expect(dueByAge(cooled, baked, at(0))).toEqual({ when: 'later', from: at(1) })
  expect(dueByAge(cooled, baked, at(1))).toEqual({ when: 'now', until: at(3) })
  expect(dueByAge(cooled, baked, at(3))).toEqual({ when: 'now', until: at(3) })
  expect(dueByAge(cooled, baked, at(3) + 1)).toEqual({ when: 'late', since: at(3) })
})

it('a volume of the next morning, and a firmness on day three, are due in their own shift', () => {
  expect(dueByAge({ ageLeastH: 18, ageMostH: 26 }, baked, at(17.5))).toEqual({ when: 'later', from: at(18) })
  expect(dueByAge({ ageLeastH: 68, ageMostH: 76 }, baked, at(70))).toEqual({ when: 'now', until: at(76) })
  // Without an end it is never late.
  expect(dueByAge({ ageLeastH: 68, ageMostH: null }, baked, at(700))).toEqual({ when: 'now', until: null })
})

it('says nothing where no age is declared, and nothing where nobody said when it was baked', () => {
  expect(dueByAge({ ageLeastH: null, ageMostH: null }, baked, at(1))).toBeNull()
  expect(dueByAge({ ageLeastH: 1, ageMostH: 3 }, null, at(1))).toBeNull()
  expect(offAge({ ageLeastH: 1, ageMostH: 3 }, null, at(10))).toBeNull()
})

it('goes from later to now to late and never back, and is flagged at exactly the ages that are not due', () => {
  const order = ['later', 'now', 'late']
  const hours = fc.double({ min: 0, max: 100, noNaN: true })
  fc.assert(
    fc.property(hours, hours, hours, hours, (least, room, one, other) => {
      const window = { ageLeastH: least, ageMostH: least + room + 0.01 }
      const [first, second] = [Math.min(one, other), Math.max(one, other)].map((age) =>
        dueByAge(window, baked, at(age)),
      )
      expect(order.indexOf(first!.when)).toBeLessThanOrEqual(order.indexOf(second!.when))
      expect(offAge(window, baked, at(one)) === null).toBe(dueByAge(window, baked, at(one))!.when === 'now')
    }),
  )
})
