import fs from 'node:fs'
import path from 'node:path'
import { catalogue } from '../calc/catalogue'
import { setTable } from './bench/table'
import {
  MOST_OF_A_SOURCE,
  countChecks,
  readChecks,
  type CheckTotals,
  type PublishedCheck,
  type SimulatedRate,
} from './published-checks'
import { runNode } from './run-node'

const root = path.resolve(import.meta.dirname, '..', '..')
const report = path.join(root, '.test', 'checks.json')

/**
 * `npm run checks`: runs every check against the outside and prints it: check, source, expected, got, relative
 * difference, and what they come to. With `long` also the simulations of lib/calc, in their long form.
 * @throws Error when a check fails, or there are too few
 */
export async function checks(...wanted: string[]): Promise<void> {
  const unknown = wanted.filter((word) => word !== 'long')
  if (unknown.length > 0) throw new Error(`There is no ${unknown.join(', ')}. Say nothing, or: long.`)
  const isLong = wanted.includes('long')
  fs.rmSync(report, { force: true })
  const files = ['tests/published', ...(isLong ? simulations() : [])]
  const status = await runNode(
    [
      'node_modules/vitest/vitest.mjs',
      'run',
      '--project',
      'unit',
      '--reporter=json',
      `--outputFile.json=${report}`,
      ...files,
    ],
    isLong ? { EVENDOUGH_LONG: '1' } : {},
  )
  if (!fs.existsSync(report)) throw new Error('The runner left no report.')
  const found = readChecks(fs.readFileSync(report, 'utf8'))
  const totals = countChecks(
    found.checks,
    catalogue.map(({ id }) => id),
  )
  console.log(`${tableOfChecks(found.checks)}\n`)
  if (found.rates.length > 0) console.log(`${tableOfRates(found.rates)}\n`)
  console.log(wordsOfTotals(totals).join('\n'))
  if (status !== 0) throw new Error(`Not every test passed; ${path.relative(root, report)} says which.`)
  if (totals.faults.length > 0) throw new Error(totals.faults.join('\n'))
}

/** Tests of lib/calc that draw more in the long form. */
function simulations(): string[] {
  const folder = 'tests/unit/calc'
  return fs
    .readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' })
    .map((file) => path.join(folder, file))
    .filter(
      (file) => file.endsWith('.test.ts') && fs.readFileSync(path.join(root, file), 'utf8').includes('support/long'),
    )
}

function tableOfChecks(all: readonly PublishedCheck[]): string {
  return setTable({
    title: 'checks against the outside',
    notes: [
      'The difference is relative, and absolute where 0 is expected. Each check states its own tolerance and why.',
    ],
    columns: ['check', 'source', 'expected', 'got', 'difference'],
    leftColumns: 2,
    rows: all.map(({ id, what, source, status, expected, got, difference, isPassed }) => [
      cut(`${isPassed ? '' : 'FAILED '}${id} ${what}`.trim(), 64),
      cut(`${source} (${status})`, 72),
      figure(expected),
      got === null ? 'nothing' : figure(got),
      difference === null ? '' : difference === 0 ? '0' : difference.toExponential(1),
    ]),
  })
}

function tableOfRates(all: readonly SimulatedRate[]): string {
  return setTable({
    title: 'simulated rates',
    notes: ['At the stated rate, more than the bound go wrong in one of a thousand such rows (exact binomial).'],
    columns: ['simulation', 'what goes wrong', 'stated', 'rate', 'wrong', 'bound', 'trials'],
    leftColumns: 2,
    rows: all.map(({ group, what, trials, stated, wrong, most, isPassed }) => [
      `${isPassed ? '' : 'FAILED '}${group}`,
      what,
      stated.toFixed(3),
      (wrong / trials).toFixed(4),
      `${wrong}`,
      `${most}`,
      `${trials}`,
    ]),
  })
}

function wordsOfTotals({ checks: all, counted, sources, entriesWithout, above }: CheckTotals): string[] {
  const list = (names: readonly string[]) => (names.length === 0 ? 'none' : names.join(', '))
  return [
    `checks: ${all}, of which ${counted} count (a source counts for ${MOST_OF_A_SOURCE} at most)`,
    `sources: ${sources}`,
    `calculations in the catalogue: ${catalogue.length}, without a check: ${list(entriesWithout)}`,
    `sources above ${MOST_OF_A_SOURCE}: ${list(above.map((source) => `${source.file} (${source.checks})`))}`,
  ]
}

function figure(value: number | string): string {
  return typeof value === 'string' ? value : Number(value.toPrecision(8)).toString()
}

function cut(text: string, most: number): string {
  return text.length <= most ? text : `${text.slice(0, most - 1)}…`
}
