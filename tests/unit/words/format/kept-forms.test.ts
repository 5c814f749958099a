import { expect, test } from 'vitest'
import { dateFormOf, numberFormOf } from '../../../../lib/words/format/kept-forms'

test('a form is made once for a locale and its options, and apart for others', () => {
  const form = numberFormOf('en-GB', { maximumFractionDigits: 2 })
  expect(numberFormOf('en-GB', { maximumFractionDigits: 2 })).toBe(form)
  expect(numberFormOf('de-DE', { maximumFractionDigits: 2 }).format(0.255)).toBe('0,26')
  expect(numberFormOf('en-GB', { maximumFractionDigits: 1 }).format(0.255)).toBe('0.3')
  expect(form.format(0.255)).toBe('0.26')
})

test('a date form keeps its zone to itself', () => {
  const at = new Date('2026-03-01T23:30:00Z')
  const day = (timeZone: string) => dateFormOf('en-GB', { timeZone, dateStyle: 'medium' }).format(at)
  expect([day('UTC'), day('Europe/Berlin'), day('UTC')]).toEqual(['1 Mar 2026', '2 Mar 2026', '1 Mar 2026'])
})

test('an unknown zone is refused each time it is asked for', () => {
  for (let i = 0; i < 2; i++) expect(() => dateFormOf('en-GB', { timeZone: 'Nowhere/Else' })).toThrow(RangeError)
})
