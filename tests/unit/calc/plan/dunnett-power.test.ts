import { expect, test } from 'vitest'
import { dunnettPower } from '@/lib/calc/plan/dunnett-power'
import { gainPower } from '@/lib/calc/plan/gain-power'
import { twoArmsPower } from '@/lib/calc/plan/two-arms-power'
import { forLong } from '@/tests/support/long'

const q = {
  controlCount: 6,
  armCount: 4,
  differences: [80, 40, 0],
  sd: 50,
  alpha: 0.05,
  alternative: 'two-sided',
} as const

test('one arm is the comparison of two', () => {
  const got = dunnettPower({ ...q, controlCount: 4, differences: [80] })
  const t = twoArmsPower({ countPerArm: 4, difference: 80, sd: 50, alpha: 0.05, alternative: 'two-sided' }).power
  expect(got.powerEach[0]).toBeCloseTo(t, 10)
  expect(got.powerAny).toBeCloseTo(t, 10)
})

test('at least one is likelier than each, and without differences it is the false alarm', () => {
  const { powerEach, powerAny } = dunnettPower(q)
  expect(powerAny).toBeGreaterThan(Math.max(...powerEach))
  expect(powerAny).toBeLessThan(powerEach.reduce((a, b) => a + b))
  expect(dunnettPower({ ...q, differences: [0, 0, 0] }).powerAny).toBeCloseTo(0.05, 8)
})

test('it is what simulated trials show', () => {
  const runs = forLong(20_000, 400_000)
  const { powerEach } = dunnettPower(q)
  const { arms } = gainPower({
    seed: 'closed',
    runs,
    worthwhile: 1e-9,
    goodDirection: 'larger',
    confidence: 0.95,
    trueDifferences: [80, 40],
    design: { layout: 'no-blocks', blocks: 2, armBatchesPerBlock: 2, controlBatchesPerBlock: 3, loavesPerBatch: 1 },
    spread: { blockSd: 0, batchSd: 50, loafSd: 0 },
  })
  const two = dunnettPower({ ...q, differences: [80, 40] }).powerEach
  arms.forEach(({ power, powerSe }, i) => expect(Math.abs(power - two[i]!)).toBeLessThan(4 * powerSe + 1e-4))
  expect(powerEach[0]).toBeLessThan(two[0]!)
})

test('less mirrors greater', () => {
  const greater = dunnettPower({ ...q, alternative: 'greater' })
  const less = dunnettPower({ ...q, differences: [-80, -40, 0], alternative: 'less' })
  greater.powerEach.forEach((power, i) => expect(less.powerEach[i]).toBeCloseTo(power, 12))
  expect(less.powerAny).toBeCloseTo(greater.powerAny, 12)
})

test.each([
  ['controlCount', { controlCount: 0 }, 'out-of-range'],
  ['armCount', { armCount: 1.5 }, 'not-whole'],
  ['armCount', { armCount: 1, controlCount: 1 }, 'no-residual-df'],
  ['differences', { differences: [] }, 'empty'],
  ['differences[0]', { differences: [Infinity] }, 'not-finite'],
  ['differences[0]', { differences: [1e6] }, 'far-beyond-spread'],
  ['differences.length', { differences: Array.from({ length: 10_000 }, () => 1) }, 'out-of-range'],
  ['sd', { sd: 0 }, 'out-of-range'],
  ['alpha', { alpha: 0 }, 'out-of-range'],
])('bad input is refused at its field: %s', (field, change, code) => {
  expect(() => dunnettPower({ ...q, ...change })).toThrow(code)
  expect(() => dunnettPower({ ...q, ...change })).toThrow(`"${field}"`)
})
