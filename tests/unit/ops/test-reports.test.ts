import { describe, expect, test } from 'vitest'
import { readPlaywrightReport, readVitestReport } from '../../../lib/ops/test-reports'

const vitest = (...files: { status: string; tests: string[] }[]) =>
  JSON.stringify({
    testResults: files.map(({ status, tests }) => ({
      status,
      assertionResults: tests.map((one) => ({ status: one })),
    })),
  })

describe('a report of Vitest', () => {
  test('is counted test by test, and what did not run is neither passed nor failed', () => {
    const text = vitest(
      { status: 'passed', tests: ['passed', 'passed', 'skipped', 'todo', 'pending'] },
      { status: 'failed', tests: ['passed', 'failed'] },
    )
    expect(readVitestReport(text)).toEqual({ passed: 3, failed: 1, skipped: 3 })
  })

  test('counts a file that could not be loaded as one failure', () => {
    expect(readVitestReport(vitest({ status: 'failed', tests: [] }))).toEqual({ passed: 0, failed: 1, skipped: 0 })
  })

  test('counts a file whose tests passed but whose clearing up failed', () => {
    expect(readVitestReport(vitest({ status: 'failed', tests: ['passed'] }))).toEqual({
      passed: 1,
      failed: 1,
      skipped: 0,
    })
  })

  test('of another form is not taken for a good one', () => {
    expect(() => readVitestReport('{}')).toThrow()
  })
})

describe('a report of Playwright', () => {
  test('counts what passed only at a second try, and errors outside any test, as failures', () => {
    const text = JSON.stringify({
      errors: [{ message: 'no server' }],
      stats: { expected: 5, unexpected: 2, flaky: 1, skipped: 3 },
    })
    expect(readPlaywrightReport(text)).toEqual({ passed: 5, failed: 4, skipped: 3 })
  })
})
