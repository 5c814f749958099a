import { describe, expect, it } from 'vitest'
import { fill, say } from '@/lib/words/say'

describe('texts with places', () => {
  it('fills each place with its fact', () => {
    expect(say('{who} changed this at {at}', 'en', { who: 'Ayo', at: '05:10' })).toBe('Ayo changed this at 05:10')
  })

  it('chooses the form by number', () => {
    const text = { one: '{count} loaf', other: '{count} loaves' } as const
    expect([0, 1, 2, 11].map((count) => say(text, 'en', { count }))).toEqual([
      '0 loaves',
      '1 loaf',
      '2 loaves',
      '11 loaves',
    ])
  })

  // Unicode CLDR, plural rules of cardinals: Polish has one, few, many and other; Welsh zero, one, two, few, many, other.
  it('chooses among all the forms of a language, and falls back to other', () => {
    const polish = { one: 'a', few: 'b', many: 'c', other: 'd' } as const
    expect([1, 2, 5, 22, 1.5].map((count) => say(polish, 'pl', { count }))).toEqual(['a', 'b', 'c', 'b', 'd'])
    const welsh = { zero: 'a', one: 'b', two: 'c', few: 'd', many: 'e', other: 'f' } as const
    expect([0, 1, 2, 3, 6, 4].map((count) => say(welsh, 'cy', { count }))).toEqual(['a', 'b', 'c', 'd', 'e', 'f'])
    expect(say({ other: '{count} kom' } as const, 'pl', { count: 2 })).toBe('2 kom')
  })

  it('takes a fact as it is, places in it too', () => {
    expect(say('{who} came', 'en', { who: '{at} $& \\1' })).toBe('{at} $& \\1 came')
  })

  it('fails on a missing fact rather than show a hole', () => {
    expect(() => fill('{who} came', 'en', {})).toThrow('no fact for {who}')
    expect(() => fill({ one: 'a', other: 'b' }, 'en', {})).toThrow('numeric fact')
  })
})
