import { expect, it } from 'vitest'
import { formatDay } from '@/lib/words/format/day'

it('a calendar day is the same day whatever zone the server is in', () =>
  expect(formatDay('2026-03-29', 'en-GB')).toBe('29 Mar 2026'))

it('what is no day is refused', () => expect(() => formatDay('yesterday', 'en-GB')).toThrow(RangeError))
