import path from 'node:path'
import { z } from 'zod'

/** What the checks against the outside must come to: `npm test` fails below. */
export const LEAST_CHECKS = 250
export const LEAST_SOURCES = 35
/** A source that is easy to take many figures from counts for no more than this. */
export const MOST_OF_A_SOURCE = 40

const checkFigures = z.object({
  id: z.string(),
  of: z.array(z.string()),
  what: z.string(),
  source: z.string(),
  status: z.string(),
  expected: z.union([z.number(), z.string()]),
  /** Null when the calculation failed, or gave no number. */
  got: z.union([z.number(), z.string(), z.null()]),
  /** Relative, absolute where 0 is expected; null for words. */
  difference: z.number().nullable(),
})
export type CheckFigures = z.infer<typeof checkFigures>

const rateFigures = z.object({
  what: z.string(),
  trials: z.number(),
  stated: z.number(),
  wrong: z.number(),
  most: z.number(),
})
export type RateFigures = z.infer<typeof rateFigures>

/** `file`: the source that it counts for, because there is one file a source. */
export type PublishedCheck = CheckFigures & { file: string; isPassed: boolean }
export type SimulatedRate = RateFigures & { group: string; isPassed: boolean }

const report = z.object({
  testResults: z.array(
    z.object({
      name: z.string(),
      assertionResults: z.array(
        z.object({
          ancestorTitles: z.array(z.string()),
          status: z.string(),
          meta: z.object({ check: checkFigures.optional(), rate: rateFigures.optional() }),
        }),
      ),
    }),
  ),
})

/** The published checks and simulated rates of a JSON report of Vitest, with the figures that the tests attached. */
export function readChecks(text: string): { checks: PublishedCheck[]; rates: SimulatedRate[] } {
  const tests = report.parse(JSON.parse(text)).testResults.flatMap(({ name, assertionResults }) =>
    assertionResults.map((test) => ({
      ...test,
      file: path.basename(name).replace(/\.test\.ts$/, ''),
      isPassed: test.status === 'passed',
    })),
  )
  return {
    checks: tests.flatMap(({ meta, file, isPassed }) => (meta.check ? [{ ...meta.check, file, isPassed }] : [])),
    rates: tests.flatMap(({ meta, ancestorTitles, isPassed }) =>
      meta.rate ? [{ ...meta.rate, group: ancestorTitles.join(', '), isPassed }] : [],
    ),
  }
}

export type CheckTotals = {
  checks: number
  /** Checks with no source counting for more than `MOST_OF_A_SOURCE`. */
  counted: number
  sources: number
  /** Sources with more checks than count. */
  above: { file: string; checks: number }[]
  /** Calculations of the catalogue that no check names. */
  entriesWithout: string[]
  faults: string[]
}

/** Adds the checks up and says what is short. @param ids of the catalogue */
export function countChecks(
  checks: readonly Pick<PublishedCheck, 'file' | 'of'>[],
  ids: readonly string[],
): CheckTotals {
  const bySource = new Map<string, number>()
  for (const { file } of checks) bySource.set(file, (bySource.get(file) ?? 0) + 1)
  const checked = new Set(checks.flatMap(({ of }) => of))
  const counted = [...bySource.values()].reduce((sum, count) => sum + Math.min(count, MOST_OF_A_SOURCE), 0)
  const entriesWithout = ids.filter((id) => !checked.has(id))
  return {
    checks: checks.length,
    counted,
    sources: bySource.size,
    above: [...bySource].flatMap(([file, count]) => (count > MOST_OF_A_SOURCE ? [{ file, checks: count }] : [])),
    entriesWithout,
    faults: [
      ...(counted < LEAST_CHECKS ? [`Only ${counted} published checks count; there must be ${LEAST_CHECKS}.`] : []),
      ...(bySource.size < LEAST_SOURCES
        ? [`Only ${bySource.size} sources are used; there must be ${LEAST_SOURCES}.`]
        : []),
      ...entriesWithout.map((id) => `${id} is in the catalogue without a published check.`),
    ],
  }
}
