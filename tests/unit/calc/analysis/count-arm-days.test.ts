import { expect, test } from 'vitest'
import { countArmDays } from '@/lib/calc/analysis/count-arm-days'

const arms = ['control', 'b', 'c']
const dough = (arm: string, block: string, y?: number) => ({ arm, block, ...(y === undefined ? {} : { y }) })

test('a day counts with the control and another arm, and is left out whole otherwise', () => {
  const rows = [
    dough('control', 'Mon', 10),
    dough('b', 'Mon', 13),
    dough('control', 'Tue', 20),
    dough('b', 'Tue'),
    dough('b', 'Wed', 30),
    dough('c', 'Wed', 31),
    dough('control', 'Thu', 10),
    dough('b', 'Thu', 12),
  ]
  const counted = countArmDays({ rows, arms })
  expect(counted.blocks).toEqual(['Mon', 'Thu'])
  expect(counted.arms).toEqual(['control', 'b'])
  expect(counted.leftOut).toEqual(['c'])
  expect(counted.completeDays).toBe(0)
})

test('an arm-day mean is of the doughs kept, and holds how many they were and how they scatter', () => {
  const rows = [
    dough('control', 'Mon', 1e9 + 1),
    dough('control', 'Mon', 1e9 + 3),
    dough('control', 'Mon'),
    dough('b', 'Mon', 7),
  ]
  expect(countArmDays({ rows, arms: ['control', 'b'] })).toMatchObject({
    completeDays: 1,
    cells: [
      { arm: 'control', block: 'Mon', doughs: 2, mean: 1e9 + 2, sumSquares: 2 },
      { arm: 'b', block: 'Mon', doughs: 1, mean: 7, sumSquares: 0 },
    ],
  })
})

test('where nothing can be compared the reason is given', () => {
  const lost = arms.flatMap((arm) => [dough(arm, 'Mon'), dough(arm, 'Tue')])
  expect(() => countArmDays({ rows: lost, arms })).toThrow('no-day-counted')
  expect(() => countArmDays({ rows: [], arms })).toThrow('no-day-counted')
  expect(() => countArmDays({ rows: [dough('control', 'Mon', 1)], arms })).toThrow('no-day-counted')
  expect(() => countArmDays({ rows: [dough('b', 'Mon', 1), dough('c', 'Mon', 1)], arms })).toThrow('no-day-counted')
})

test('what is no dough of the trial, or no figure, is refused at its place', () => {
  const rows = [dough('control', 'Mon', 1), dough('x', 'Mon', 2)]
  expect(() => countArmDays({ rows, arms })).toThrow(/rows\[1\]\.arm.*unknown-arm/)
  const spoiled = [dough('control', 'Mon', 1), dough('b', 'Mon', NaN)]
  expect(() => countArmDays({ rows: spoiled, arms })).toThrow(/not-finite.*rows\[1\]\.y/)
  expect(() => countArmDays({ rows, arms: ['control'] })).toThrow('one-arm')
  expect(() => countArmDays({ rows, arms: ['control', 'x', 'x'] })).toThrow('duplicate')
  expect(() => countArmDays({ rows, arms: Array.from({ length: 101 }, (_, i) => String(i)) })).toThrow('many-arms')
})
