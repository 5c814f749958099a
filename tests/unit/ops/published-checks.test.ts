import { describe, expect, test } from 'vitest'
import {
  LEAST_CHECKS,
  LEAST_SOURCES,
  MOST_OF_A_SOURCE,
  countChecks,
  readChecks,
} from '../../../lib/ops/published-checks'

const from = (file: string, count: number, of: string[] = []) => Array.from({ length: count }, () => ({ file, of }))
const enough = Array.from({ length: LEAST_SOURCES }, (_, i) =>
  from(`source ${i}`, Math.ceil(LEAST_CHECKS / LEAST_SOURCES)),
).flat()

describe('counting checks', () => {
  test('enough of them from enough sources is no fault', () => {
    expect(countChecks(enough, [])).toMatchObject({ sources: LEAST_SOURCES, faults: [], above: [], entriesWithout: [] })
  })

  test('one source cannot stand in for many', () => {
    const totals = countChecks(from('one', 1000), [])
    expect(totals).toMatchObject({
      checks: 1000,
      counted: MOST_OF_A_SOURCE,
      sources: 1,
      above: [{ file: 'one', checks: 1000 }],
    })
    expect(totals.faults).toHaveLength(2)
  })

  test('a calculation that no check names is a fault', () => {
    const totals = countChecks(
      [...enough, ...from('more', 1, ['cost/batch-cost'])],
      ['cost/batch-cost', 'cost/unit-costs'],
    )
    expect(totals.entriesWithout).toEqual(['cost/unit-costs'])
    expect(totals.faults).toEqual(['cost/unit-costs is in the catalogue without a published check.'])
  })
})

test('figures are read from a report with the file they are in; tests without figures are not checks', () => {
  const figures = {
    id: 'P-1',
    of: [],
    what: 'w',
    source: 's',
    status: 'published',
    expected: 2,
    got: null,
    difference: null,
  }
  const rate = { what: 'called better', trials: 100, stated: 0.05, wrong: 3, most: 14 }
  const test = (meta: unknown, status = 'passed') => ({ ancestorTitles: ['2 blocks'], status, meta })
  const text = JSON.stringify({
    testResults: [
      {
        name: '/x/tests/published/some-book-1999.test.ts',
        assertionResults: [test({ check: figures }, 'failed'), test({}), test({ rate })],
      },
    ],
  })
  expect(readChecks(text)).toEqual({
    checks: [{ ...figures, file: 'some-book-1999', isPassed: false }],
    rates: [{ ...rate, group: '2 blocks', isPassed: true }],
  })
})
