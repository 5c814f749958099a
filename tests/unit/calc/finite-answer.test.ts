import { expect, test } from 'vitest'
import { finiteAnswer } from '@/lib/calc/finite-answer'

test('an answer in finite numbers is handed on as it is', () => {
  const answer = { lines: [{ massG: 0 }, { massG: null }], outcome: 'mix', possible: true }
  expect(finiteAnswer({ waterMassG: 1 }, answer)).toBe(answer)
})

test.each([Number.NaN, Infinity, -Infinity])(
  '%s, however deep, is refused at the field with the largest figure',
  (bad) =>
    expect(() =>
      finiteAnswer({ seed: 'x', waterMassG: 1, parts: [{ massG: -1e300 }] }, { lines: [{ massG: bad }] }),
    ).toThrow(expect.objectContaining({ code: 'not-possible', facts: { field: 'parts', reason: 'beyond-numbers' } })),
)
