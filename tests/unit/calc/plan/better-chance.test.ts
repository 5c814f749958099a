import { expect, test } from 'vitest'
import { noncentralTTail } from '@/lib/calc/distributions/noncentral-t-tail'
import { normalTail } from '@/lib/calc/distributions/normal-tail'
import { betterChance } from '@/lib/calc/plan/better-chance'
import { gainPower } from '@/lib/calc/plan/gain-power'
import { forLong } from '@/tests/support/long'

const q = { trueDifference: 150, worthwhile: 80, differenceSe: 45, criticalValue: 2.4, df: 9 }

test('without a worthwhile difference it is the noncentral t', () => {
  for (const df of [1, 4, 30, 1e5]) {
    for (const trueDifference of [-20, 0, 60, 200, 4000]) {
      const t = noncentralTTail({ t: 2.4, df, noncentrality: trueDifference / 45, tail: 'upper' })
      expect(betterChance({ ...q, df, trueDifference, worthwhile: 0 })).toBeCloseTo(t, 6)
    }
  }
})

test('with a worthwhile difference beyond any interval the estimate alone decides', () => {
  const normal = normalTail({ z: (600 - 650) / 45, tail: 'upper' })
  expect(betterChance({ ...q, worthwhile: 600, trueDifference: 650, df: 30 })).toBeCloseTo(normal, 6)
})

test('it is what simulated verdicts show', () => {
  const runs = forLong(20_000, 400_000)
  for (const worthwhile of [20, 80, 120]) {
    const { residualDf, criticalValue, differenceSe, arms } = gainPower({
      seed: 'better',
      runs,
      worthwhile,
      goodDirection: 'larger',
      confidence: 0.95,
      trueDifferences: [150, 100],
      design: {
        layout: 'complete-blocks',
        blocks: 4,
        armBatchesPerBlock: 1,
        controlBatchesPerBlock: 2,
        loavesPerBatch: 3,
      },
      spread: { blockSd: 60, batchSd: 40, loafSd: 50 },
    })
    for (const { trueDifference, power, powerSe } of arms) {
      const got = betterChance({ trueDifference, worthwhile, differenceSe, criticalValue, df: residualDf })
      expect(Math.abs(got - power), JSON.stringify({ worthwhile, trueDifference, got, power })).toBeLessThan(
        4 * powerSe,
      )
    }
  }
})

test.each([
  ['differenceSe', { differenceSe: 0 }, 'out-of-range'],
  ['criticalValue', { criticalValue: -1 }, 'out-of-range'],
  ['worthwhile', { worthwhile: -1 }, 'out-of-range'],
  ['df', { df: 0 }, 'out-of-range'],
  ['trueDifference', { trueDifference: NaN }, 'not-finite'],
  ['trueDifference', { trueDifference: 1e6 }, 'far-beyond-spread'],
])('bad input is refused at its field: %s %j', (field, change, code) => {
  expect(() => betterChance({ ...q, ...change })).toThrow(code)
  expect(() => betterChance({ ...q, ...change })).toThrow(`"${field}"`)
})
