import { expect, test } from 'vitest'
import { listOf } from '@/lib/words/list-of'

test('names follow each other as the language sets a list', () => {
  expect(listOf(['milk', 'egg', 'sesame'], 'en')).toBe('milk, egg, sesame')
  // Unicode CLDR, listPattern-type-unit: Japanese puts a blank, Spanish 'y' before the last.
  expect(listOf(['a', 'b', 'c'], 'ja')).toBe('a b c')
  expect(listOf(['a', 'b', 'c'], 'es')).toBe('a, b y c')
})

test('one is itself, none is nothing', () => {
  expect(listOf(['milk'], 'en')).toBe('milk')
  expect(listOf([], 'en')).toBe('')
})
