import { expect, test } from 'vitest'
import { paragraph } from '@/lib/words/paragraph'

test('sentences that are there follow each other, as the language sets them', () => {
  expect(paragraph(['One.', null, undefined, 'Two.'], 'en')).toBe('One. Two.')
  expect(paragraph(['一。', '二。'], 'ja-JP')).toBe('一。二。')
  expect(paragraph([null], 'en')).toBe('')
})
