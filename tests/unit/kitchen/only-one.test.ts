import { expect, it } from 'vitest'
import { onlyOne } from '@/lib/kitchen/only-one'

it('is the one of a list of one, an empty text and zero too', () => {
  expect(onlyOne(['EUR'])).toBe('EUR')
  expect(onlyOne([''])).toBe('')
  expect(onlyOne([0])).toBe(0)
})

it('is nothing where there is none, or where it would have to be chosen', () => {
  expect(onlyOne([])).toBeNull()
  expect(onlyOne(['EUR', 'GBP'])).toBeNull()
  expect(onlyOne(['EUR', 'EUR'])).toBeNull()
})
