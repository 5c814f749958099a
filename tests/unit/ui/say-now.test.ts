import { expect, it } from 'vitest'
import { sayNow } from '@/lib/ui/say-now'
import { wordsIn } from '@/lib/words/words'

const english = wordsIn('en').desk.drafts
const other = wordsIn('en-XA').desk.drafts

it('says what stands in the book now, as it is read', () => {
  expect(sayNow('grams', english, 'en')).toBe('Now in the book: grams')
})

it.each([
  ['', 'Now in the book: nothing', other.nowNothing],
  [undefined, 'Now in the book: nothing', other.nowNothing],
  [true, 'Now in the book: ticked', other.nowTicked],
  [false, 'Now in the book: not ticked', other.nowNotTicked],
])('says in a sentence of its own that it is %j, in every language', (shown, inEnglish, inOther) => {
  expect(sayNow(shown, english, 'en')).toBe(inEnglish)
  expect(sayNow(shown, other, 'en-XA')).toBe(inOther)
})
