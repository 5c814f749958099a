import { expect, test } from 'vitest'
import { usServing } from '@/lib/calc/label/us-serving'

test('a package of one slice holds one serving, and a small roll is served by several', () => {
  expect(usServing({ pieceG: 50, packageG: 50 }).servings).toBe(1)
  expect(usServing({ pieceG: 10, packageG: 400 })).toMatchObject({
    leastPieces: 5,
    mostPieces: 5,
    servingG: 50,
    servings: 8,
  })
})

test('between two and five servings halves are said, beyond them not', () => {
  expect(usServing({ pieceG: 50, packageG: 130 }).servings).toBe(2.5)
  expect(usServing({ pieceG: 50, packageG: 265 }).servings).toBe(5)
  expect(usServing({ pieceG: 50, packageG: 270 }).servings).toBe(5)
  expect(usServing({ pieceG: 50, packageG: 280 }).servings).toBe(6)
})

test('it is always a draft that says which rule to check', () => {
  expect(usServing({ pieceG: 50, packageG: 500 }).cautions).toContain('rule-of-2016')
})

test('a piece beyond the rule, and a package lighter than its piece, are refused', () => {
  expect(() => usServing({ pieceG: 101, packageG: 500 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'pieceG' }) }),
  )
  expect(() => usServing({ pieceG: 50, packageG: 49 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'packageG' }) }),
  )
})
