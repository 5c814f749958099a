import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { comparisonEntries } from '@/lib/calc/comparison/entries'
import { doseResponseEntries } from '@/lib/calc/dose-response/entries'
import type { CalcEntry } from '@/lib/calc/entry'
import { CalcError } from '@/lib/calc/error'
import { forLong } from '@/tests/support/long'

const entries: readonly CalcEntry[] = [...comparisonEntries, ...doseResponseEntries]

const odd = fc.oneof(
  fc.constantFrom(0, -0, 1, 1, 2, 5, -1, 1e-9, 1e9, 1e99, -1e99, 1e-99, 1e160, 5e-324, NaN, Infinity, -Infinity),
  fc.integer({ min: -50, max: 50 }),
  fc.double({ min: 1, max: 1 + 1e-12, noNaN: true }),
)

type Pick = <T>(from: fc.Arbitrary<T>) => T

/** The example with some of its numbers, names and rows made odd: few kinds of number in one question, or all would be refused. */
function twisted(value: unknown, pick: Pick, palette: readonly number[], often: number): unknown {
  if (typeof value === 'number')
    return pick(fc.integer({ min: 1, max: 10 })) <= often ? pick(fc.constantFrom(...palette)) : value
  if (Array.isArray(value)) {
    const kept = value.slice(0, pick(fc.constantFrom(value.length, value.length, value.length, 0, 1, 2, 3)))
    return pick(fc.constantFrom(0, 0, 0, 1))
      ? kept.map(() => kept[0])
      : kept.map((item) => twisted(item, pick, palette, often))
  }
  if (typeof value === 'object' && value !== null) {
    return Object.fromEntries(
      Object.entries(value).map(([key, item]) => [
        key,
        key === 'confidence' ? item : twisted(item, pick, palette, often),
      ]),
    )
  }
  return value
}

/** Every number of an answer; zod's own z.number() takes no NaN and no infinity either. */
function numbersOf(value: unknown): number[] {
  if (typeof value === 'number') return [value]
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersOf) : []
}

describe.each(entries)('$id', (entry) => {
  test('answers odd input with finite numbers or with a refusal that names the field', () => {
    fc.assert(
      fc.property(fc.gen(), (pick) => {
        const draw: Pick = (from) => pick(() => from)
        const palette = draw(fc.array(odd, { minLength: 1, maxLength: 4 }))
        const question = twisted(entry.example, draw, palette, draw(fc.constantFrom(1, 4, 10))) as never
        try {
          const answer = entry.run(question)
          for (const number of numbersOf(answer)) expect(Number.isFinite(number)).toBe(true)
        } catch (error) {
          if (!(error instanceof CalcError)) throw error
          expect(error.facts.field.length).toBeGreaterThan(0)
        }
      }),
      { numRuns: forLong(150, 3_000), endOnFailure: true },
    )
  })
})
