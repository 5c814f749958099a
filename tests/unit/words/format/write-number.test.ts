import { expect, test } from 'vitest'
import { writeNumber } from '../../../../lib/words/format/write-number'

test('a real minus stands before what is below zero', () => {
  expect(writeNumber(new Intl.NumberFormat('en-GB'), -1.5)).toBe('\u22121.5')
})

test('decimal text is written exactly, beyond what a floating-point number holds', () => {
  expect(writeNumber(new Intl.NumberFormat('en-GB'), '9007199254740993')).toBe('9,007,199,254,740,993')
})
