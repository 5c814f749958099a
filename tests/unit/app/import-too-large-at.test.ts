import { expect, test } from 'vitest'
import { tooLargeAt } from '@/app/(desk)/trials/[trialId]/import/too-large-at'

const most = 1000
const sent = (file: string | null, text: string) => {
  const form = new FormData()
  if (file !== null) form.set('file', new File([file], 'a.csv'))
  form.set('text', text)
  return form
}

test('a file or a text of just the most is sent, one byte more is not', () => {
  expect(tooLargeAt(sent('x'.repeat(most), ''), most)).toBeNull()
  expect(tooLargeAt(sent('x'.repeat(most + 1), ''), most)).toBe('file')
  expect(tooLargeAt(sent(null, 'x'.repeat(most)), most)).toBeNull()
  expect(tooLargeAt(sent('a', 'x'.repeat(most + 1)), most)).toBe('text')
})

test('a pasted text counts in bytes: letters of three bytes are too many long before their number is', () => {
  // '温' is three bytes in UTF-8 (RFC 3629).
  expect(tooLargeAt(sent(null, '温'.repeat(333)), most)).toBeNull()
  expect(tooLargeAt(sent(null, '温'.repeat(334)), most)).toBe('text')
})

test('nothing chosen and nothing pasted is not too large', () => {
  expect(tooLargeAt(sent(null, ''), most)).toBeNull()
  expect(tooLargeAt(new FormData(), most)).toBeNull()
})
