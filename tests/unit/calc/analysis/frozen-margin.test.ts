import { expect, test } from 'vitest'
import { frozenMargin } from '@/lib/calc/analysis/frozen-margin'

test('units stay, a percentage becomes units of the control', () => {
  expect(frozenMargin({ kind: 'units', value: 120 })).toBe(120)
  expect(frozenMargin({ kind: 'pct-of-control', pct: 5, controlLevel: 2400 })).toBeCloseTo(120, 12)
})

test('on the log scale a percentage is that change of the ratio in the good direction', () => {
  expect(Math.exp(frozenMargin({ kind: 'pct-on-log-scale', pct: 5, goodDirection: 'larger' }))).toBeCloseTo(1.05, 14)
  expect(Math.exp(-frozenMargin({ kind: 'pct-on-log-scale', pct: 5, goodDirection: 'smaller' }))).toBeCloseTo(0.95, 14)
})

test('nothing, all and a control of zero are refused', () => {
  expect(() => frozenMargin({ kind: 'units', value: 0 })).toThrow('out-of-range')
  expect(() => frozenMargin({ kind: 'pct-on-log-scale', pct: 100, goodDirection: 'smaller' })).toThrow('out-of-range')
  expect(() => frozenMargin({ kind: 'pct-of-control', pct: 5, controlLevel: 0 })).toThrow('out-of-range')
})
