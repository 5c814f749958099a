import { expect, test } from 'vitest'
import { contentsSummary } from '@/lib/calc/net-weight/contents-summary'

test('mean and spread with divisor n − 1; one package has no spread', () => {
  expect(contentsSummary({ contentsG: [2, 4, 4, 4, 5, 5, 7, 9], least: 2 })).toEqual({
    meanG: 5,
    sdG: expect.closeTo(Math.sqrt(32 / 7), 12),
  })
  expect(contentsSummary({ contentsG: [500], least: 1 })).toEqual({ meanG: 500, sdG: null })
})

test('too few, too many and no numbers are refused', () => {
  expect(() => contentsSummary({ contentsG: [1], least: 2 })).toThrow(expect.objectContaining({ code: 'empty' }))
  expect(() => contentsSummary({ contentsG: new Array<number>(10_001).fill(1), least: 2 })).toThrow(
    expect.objectContaining({ code: 'out-of-range' }),
  )
  expect(() => contentsSummary({ contentsG: [1, Number.NaN], least: 2 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'contentsG[1]' }) }),
  )
  expect(() => contentsSummary({ contentsG: [1e308, 1e308], least: 2 })).toThrow(
    expect.objectContaining({ code: 'not-finite' }),
  )
})
