import { expect, test } from 'vitest'
import { type LimitsCase, whereLimitsLie } from '@/lib/calc/analysis/where-limits-lie'

const GAIN = 3
const LOSS = 2

/** What a case claims of the differences that are possible, larger being better. */
type Claim = {
  gainThatMatters: boolean
  smallGain: boolean
  none: boolean
  smallLoss: boolean
  lossThatMatters: boolean
}
type Part = keyof Claim

/** What must be possible, and what must not; what is in neither is left open by the case. */
const claims: Record<LimitsCase, { possible: Part[]; impossible: Part[] }> = {
  'gain-that-matters': {
    possible: ['gainThatMatters'],
    impossible: ['smallGain', 'none', 'smallLoss', 'lossThatMatters'],
  },
  'gain-perhaps-matters': {
    possible: ['gainThatMatters', 'smallGain'],
    impossible: ['none', 'smallLoss', 'lossThatMatters'],
  },
  'small-gain': {
    possible: ['smallGain'],
    impossible: ['gainThatMatters', 'none', 'smallLoss', 'lossThatMatters'],
  },
  'within-margin': { possible: ['none'], impossible: ['gainThatMatters', 'lossThatMatters'] },
  'none-to-gain-that-matters': {
    possible: ['none', 'smallGain', 'gainThatMatters'],
    impossible: ['lossThatMatters'],
  },
  'none-to-loss-that-matters': {
    possible: ['none', 'smallLoss', 'lossThatMatters'],
    impossible: ['gainThatMatters'],
  },
  anything: { possible: ['gainThatMatters', 'none', 'lossThatMatters'], impossible: [] },
  'small-loss': {
    possible: ['smallLoss'],
    impossible: ['gainThatMatters', 'smallGain', 'none', 'lossThatMatters'],
  },
  'loss-perhaps-matters': {
    possible: ['smallLoss', 'lossThatMatters'],
    impossible: ['gainThatMatters', 'smallGain', 'none'],
  },
  'loss-that-matters': {
    possible: ['lossThatMatters'],
    impossible: ['gainThatMatters', 'smallGain', 'none', 'smallLoss'],
  },
}

/** Differences to be asked one by one whether they are possible, finer than the grid of limits; edges of all parts. */
const differences = Array.from({ length: 801 }, (_, i) => (i - 400) / 40)

function partOf(difference: number): Part {
  if (difference >= GAIN) return 'gainThatMatters'
  if (difference <= -LOSS) return 'lossThatMatters'
  return difference > 0 ? 'smallGain' : difference < 0 ? 'smallLoss' : 'none'
}

const limits = Array.from({ length: 49 }, (_, i) => (i - 24) / 4)
const openLow: (number | null)[] = [null, ...limits]
const openHigh: (number | null)[] = [...limits, null]
const grid = openLow.flatMap((low) =>
  openHigh.flatMap((high) =>
    (low === null && high === null) || (low !== null && high !== null && low > high) ? [] : [{ low, high }],
  ),
)

test('what each case claims is true of every interval that it is said of, and each is said of some', () => {
  const false_: string[] = []
  const said = new Set<LimitsCase>()
  for (const { low, high } of grid) {
    const found = whereLimitsLie({ low, high, gain: GAIN, loss: LOSS, goodDirection: 'larger' })
    said.add(found)
    const possible = new Set(
      differences.filter((value) => value >= (low ?? -Infinity) && value <= (high ?? Infinity)).map(partOf),
    )
    const { possible: must, impossible } = claims[found]
    if (must.some((part) => !possible.has(part)) || impossible.some((part) => possible.has(part)))
      false_.push(`${low} to ${high}: ${found}`)
  }
  expect(false_).toEqual([])
  expect([...said].sort()).toEqual(Object.keys(claims).sort())
})

test('where smaller is better it is the mirror of it', () => {
  const turned = (value: number | null) => (value === null ? null : -value)
  for (const { low, high } of grid)
    expect(
      whereLimitsLie({ low: turned(high), high: turned(low), gain: GAIN, loss: LOSS, goodDirection: 'smaller' }),
    ).toBe(whereLimitsLie({ low, high, gain: GAIN, loss: LOSS, goodDirection: 'larger' }))
})

test('two intervals of which it is false that a difference worth having and none are both possible', () => {
  const at = (low: number, high: number) => whereLimitsLie({ low, high, gain: 3, loss: 3, goodDirection: 'larger' })
  expect(at(0.8, 4.1)).toBe('gain-perhaps-matters')
  expect(at(-6.5, 0.3)).toBe('none-to-loss-that-matters')
})

test('what is no interval is refused', () => {
  const q = { gain: 3, loss: 3, goodDirection: 'larger' as const }
  expect(() => whereLimitsLie({ ...q, low: 2, high: 1 })).toThrow('wrong-shape')
  expect(() => whereLimitsLie({ ...q, low: null, high: null })).toThrow('empty')
  expect(() => whereLimitsLie({ ...q, low: NaN, high: 1 })).toThrow('not-finite')
  expect(() => whereLimitsLie({ ...q, gain: 0, low: 0, high: 1 })).toThrow('gain')
  expect(() => whereLimitsLie({ ...q, loss: -1, low: 0, high: 1 })).toThrow('loss')
})
