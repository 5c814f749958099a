import { describe, expect, it } from 'vitest'
import { fill, say } from '@/lib/words/say'

describe('texts with places', () => {
  it('fills each place with its fact', () => {
    expect(say('{who} changed this at {at}', 'en', { who: 'Ayo', at: '05:10' })).toBe('Ayo changed this at 05:10')
  })

  it('chooses the form by number', () => {
    const text = { one: '{count} loaf', other: '{count} loaves' } as const
    expect([0, 1, 2, 11].map((count) => say(text, 'en', { count }))).toEqual(['0 loaves', '1 loaf', '2 loaves', '11 loaves'])
  })

  it('takes a fact as it is, places in it too', () => {
    expect(say('{who} came', 'en', { who: '{at} $& \\1' })).toBe('{at} $& \\1 came')
  })

  it('fails on a missing fact rather than show a hole', () => {
    expect(() => fill('{who} came', 'en', {})).toThrow('no fact for {who}')
    expect(() => fill({ one: 'a', other: 'b' }, 'en', {})).toThrow('numeric fact')
  })
})
