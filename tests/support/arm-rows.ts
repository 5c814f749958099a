import fc from 'fast-check'
import { expect } from 'vitest'
import { CalcError } from '@/lib/calc/error'

/** Readings with a few decimals, as a scale gives them; never so near each other that only rounding is left. */
export const reading = fc.integer({ min: -4000, max: 4000 }).map((value) => value / 8)

/** Some arms with two to six readings each, in one list. */
export const armRows = fc
  .array(fc.array(reading, { minLength: 2, maxLength: 6 }), { minLength: 2, maxLength: 4 })
  .map((arms) => arms.flatMap((values, i) => values.map((y) => ({ arm: `arm ${i}`, y }))))

/** True where every arm has two different values. */
export function eachArmVaries(rows: readonly { arm: string; y: number }[]): boolean {
  return [...new Set(rows.map((row) => row.arm))].every(
    (arm) => new Set(rows.filter((row) => row.arm === arm).map((row) => row.y)).size > 1,
  )
}

/** The values moved and stretched. */
export function moved<T extends { y: number }>(rows: readonly T[], by: number, times: number): T[] {
  return rows.map((row) => ({ ...row, y: by + times * row.y }))
}

/** Holds a refusal to its code and, where given, its reason. */
export function expectRefusal(run: () => unknown, code: CalcError['code'], reason?: string): void {
  let refusal: unknown
  try {
    run()
  } catch (error) {
    refusal = error
  }
  expect(refusal).toBeInstanceOf(CalcError)
  const { code: got, facts } = refusal as CalcError
  expect({ code: got, reason: facts.reason }).toEqual({ code, reason })
}

/** Ten thousand values in so many arms. */
export function tenThousand(arms: number): { arm: string; y: number }[] {
  return Array.from({ length: 10_000 }, (_, i) => ({ arm: `arm ${i % arms}`, y: 2500 + Math.sin(i * i) * 40 }))
}
