import { z } from 'zod'

/** Tests of one stage. */
export type Count = { passed: number; failed: number; skipped: number }

const vitestReport = z.object({
  testResults: z.array(z.object({ status: z.string(), assertionResults: z.array(z.object({ status: z.string() })) })),
})

/** Counts a JSON report of Vitest. A file that could not be loaded has no tests to fail: it counts as one. */
export function readVitestReport(text: string): Count {
  const count = { passed: 0, failed: 0, skipped: 0 }
  for (const file of vitestReport.parse(JSON.parse(text)).testResults) {
    const failedBefore = count.failed
    for (const { status } of file.assertionResults) {
      if (status === 'passed') count.passed++
      else if (status === 'failed') count.failed++
      else count.skipped++
    }
    if (file.status === 'failed' && count.failed === failedBefore) count.failed++
  }
  return count
}

const playwrightReport = z.object({
  errors: z.array(z.unknown()),
  stats: z.object({ expected: z.number(), unexpected: z.number(), flaky: z.number(), skipped: z.number() }),
})

/** Counts a JSON report of Playwright. A test that passed only when tried again failed; so did an error outside any test. */
export function readPlaywrightReport(text: string): Count {
  const { errors, stats } = playwrightReport.parse(JSON.parse(text))
  return { passed: stats.expected, failed: stats.unexpected + stats.flaky + errors.length, skipped: stats.skipped }
}
