import { expect, test } from 'vitest'
import { discriminationPower } from '@/lib/calc/panel/discrimination-power'
import { tastersNeeded } from '@/lib/calc/panel/tasters-needed'

const asked = { test: 'triangle', alpha: 0.05, power: 0.8, effectKind: 'd-prime', effect: 1.5 } as const

test('that many reach the power and none fewer do', () => {
  const { tasters, powerReached, steadyTasters } = tastersNeeded(asked)
  const power = (count: number) => discriminationPower({ ...asked, tasters: count }).power
  expect(power(tasters)).toBe(powerReached)
  for (let fewer = 1; fewer < tasters; fewer++) expect(power(fewer)).toBeLessThan(0.8)
  for (let more = steadyTasters; more < steadyTasters + 100; more++) expect(power(more)).toBeGreaterThanOrEqual(0.8)
  expect(power(steadyTasters - 1)).toBeLessThan(0.8)
})

test('a smaller difference takes more tasters, and one too small is refused in good time', () => {
  expect(tastersNeeded({ ...asked, effect: 1 }).tasters).toBeGreaterThan(tastersNeeded(asked).tasters)
  expect(() => tastersNeeded({ ...asked, effect: 0.05 })).toThrow('too-many-tasters')
})

test('bad input is refused', () => {
  expect(() => tastersNeeded({ ...asked, power: 80 })).toThrow('power')
  expect(() => tastersNeeded({ ...asked, effect: -1 })).toThrow('effect')
  expect(() => tastersNeeded({ ...asked, alpha: 0 })).toThrow('alpha')
})
