import { expect, it } from 'vitest'
import { formatNumber } from '@/lib/words/format/number'
import { withUnit } from '@/lib/words/format/with-unit'

/* Source: SI Brochure, 9th edition, 5.4.3: a space between number and unit, before °C and % too. */
it('a number and its unit are parted by a no-break space and nothing else', () => {
  expect(withUnit(formatNumber(-1.8, { locale: 'de-DE', digits: 1 }), '°C')).toBe('\u22121,8\u00a0°C')
  expect(withUnit('8.9', '%')).toBe('8.9\u00a0%')
})
