import { expect, test } from 'vitest'
import { tempWarnings } from '@/lib/calc/fermentation/temp-warnings'

test('a dough between 8 and 32 °C needs no word, a cold and a hot one do', () => {
  expect(tempWarnings(8, 32)).toEqual([])
  expect(tempWarnings(7.9, 20)).toEqual(['rules-differ-in-the-cold'])
  expect(tempWarnings(1, 35)).toEqual(['warmer-than-optimum', 'rules-differ-in-the-cold', 'colder-than-minimum'])
})
