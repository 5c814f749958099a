import { expect, test } from 'vitest'
import { nameKey } from '@/lib/calc/label/name-key'

test('case and white space do not tell names apart, words do', () => {
  expect(nameKey(' Wheat \t FLOUR ')).toBe(nameKey('wheat flour'))
  expect(nameKey('wheat flour')).not.toBe(nameKey('wheatflour'))
})
