import { expect, it } from 'vitest'
import { stoodBefore } from '@/lib/kitchen/conduct/stood-before'

const at = (minute: number) => new Date(Date.UTC(2026, 2, 2, 4, minute))
const entry = (id: string, supersedes: string | null, minute: number) => ({ id, supersedes, receivedAt: at(minute) })
const entries = [entry('a', null, 1), entry('b', 'a', 5), entry('c', 'b', 9), entry('d', null, 9)]
const ids = (moment: Date | null) => stoodBefore(entries, moment).map(({ id }) => id)

it('is what had come in by then and had not given way by then; at the same moment is not before', () => {
  expect(ids(at(1))).toEqual([])
  expect(ids(at(2))).toEqual(['a'])
  expect(ids(at(5))).toEqual(['a'])
  expect(ids(at(6))).toEqual(['b'])
  expect(ids(at(9))).toEqual(['b'])
  expect(ids(null)).toEqual(['c', 'd'])
})

it('is the same, whatever comes in after', () => {
  expect(stoodBefore([...entries, entry('e', 'b', 30), entry('f', 'd', 31)], at(6)).map(({ id }) => id)).toEqual(['b'])
})
