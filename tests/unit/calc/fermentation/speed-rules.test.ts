import { expect, test } from 'vitest'
import { speedBy, SPEED_RULE_NAMES } from '@/lib/calc/fermentation/speed-rules'

test.each(SPEED_RULE_NAMES)('%s: warmer is faster up to the best temperature of yeast', (rule) => {
  for (let tempC = 3; tempC < 32; tempC++) expect(speedBy(rule, tempC + 1)).toBeGreaterThan(speedBy(rule, tempC))
})

test('ten degrees more are twice, and 1.1 to the tenth', () => {
  expect(speedBy('q10-of-2', 28) / speedBy('q10-of-2', 18)).toBeCloseTo(2, 12)
  expect(speedBy('ten-pct-per-degree', 28) / speedBy('ten-pct-per-degree', 18)).toBeCloseTo(2.5937424601, 9)
})
