import fs from 'node:fs'
import path from 'node:path'
import { catalogue } from '../calc/catalogue'
import { ensureBuilt } from './build'
import { countChecks, readChecks } from './published-checks'
import { runNode } from './run-node'
import { readPlaywrightReport, readVitestReport, type Count } from './test-reports'

const root = path.resolve(import.meta.dirname, '..', '..')
const reports = path.join(root, '.test')

type Stage = {
  name: string
  /** Runs it and counts; a stage that is no test runner counts as one test. */
  run(): Promise<Count>
}

/** In order; those of one row run side by side, because each of them keeps one core busy. */
const stages: readonly (readonly Stage[])[] = [
  [
    { name: 'types', run: () => asOneTest(checkTypes) },
    { name: 'lint', run: () => asOneTest(lint) },
  ],
  [{ name: 'build', run: () => asOneTest(async () => Boolean(await ensureBuilt())) }],
  [{ name: 'unit', run: async () => withChecks(await runVitest('unit')) }],
  [{ name: 'database', run: () => runVitest('database') }],
  [{ name: 'browser', run: runPlaywright }],
]

/**
 * Runs the stages in order, each to its end whatever came of the one before, and adds up.
 * @param wanted names of stages; none for all of them, and then each runner must have run no fewer tests than
 *   tests/floor.json says, so that tests cannot get lost unseen
 */
export async function testStages(wanted: readonly string[]): Promise<Count> {
  const every = stages.flat()
  const unknown = wanted.filter((name) => !every.some((stage) => stage.name === name))
  if (unknown.length > 0) {
    console.error(
      `There is no stage ${unknown.join(', ')}. The stages are ${every.map((stage) => stage.name).join(', ')}.`,
    )
    return { passed: 0, failed: 1, skipped: 0 }
  }
  fs.mkdirSync(reports, { recursive: true })
  const counts = new Map<string, Count>()
  const run = async (stage: Stage) => {
    console.log(`\n── ${stage.name} ──`)
    const report = reportOf(stage.name)
    // A report of an earlier run must not stand in for this one.
    fs.rmSync(report, { force: true })
    const count =
      stage.name === 'browser' && counts.get('build')?.failed ? notRun('the app was not built') : await stage.run()
    const checked = wanted.length > 0 ? count : withFloor(stage.name, count)
    counts.set(stage.name, checked)
    if (!fs.existsSync(report)) fs.writeFileSync(report, `${JSON.stringify(checked)}\n`)
  }
  for (const row of stages)
    await Promise.all(row.filter(({ name }) => wanted.length === 0 || wanted.includes(name)).map(run))
  console.log('')
  for (const [name, { passed, failed, skipped }] of counts) {
    console.log(
      `${name.padEnd(10)} ${String(passed).padStart(5)} passed ${String(failed).padStart(5)} failed ${String(skipped).padStart(5)} skipped`,
    )
  }
  return [...counts.values()].reduce(add, { passed: 0, failed: 0, skipped: 0 })
}

function add(a: Count, b: Count): Count {
  return { passed: a.passed + b.passed, failed: a.failed + b.failed, skipped: a.skipped + b.skipped }
}

function reportOf(stage: string): string {
  return path.join(reports, `${stage}.json`)
}

function notRun(why: string): Count {
  console.error(`Not run: ${why}.`)
  return { passed: 0, failed: 1, skipped: 0 }
}

async function asOneTest(test: () => Promise<boolean>): Promise<Count> {
  try {
    if (await test()) return { passed: 1, failed: 0, skipped: 0 }
  } catch (error) {
    console.error(error instanceof Error ? error.message : error)
  }
  return { passed: 0, failed: 1, skipped: 0 }
}

async function checkTypes(): Promise<boolean> {
  // Writes next-env.d.ts and the types of the routes, which a fresh clone does not have.
  if ((await runNode(['node_modules/next/dist/bin/next', 'typegen'], { NEXT_TELEMETRY_DISABLED: '1' })) !== 0)
    return false
  return (await runNode(['node_modules/typescript/bin/tsc', '--noEmit'])) === 0
}

async function lint(): Promise<boolean> {
  const isLaidOut = (await runNode(['node_modules/@biomejs/biome/bin/biome', 'format'])) === 0
  const isClean = (await runNode(['node_modules/eslint/bin/eslint.js', '.', '--max-warnings', '0'])) === 0
  // What nothing uses; knip.jsonc says what it cannot see by itself.
  const isUsed =
    (await runNode([
      'node_modules/knip/bin/knip.js',
      '--no-progress',
      '--treat-config-hints-as-errors',
      '--cache',
      '--cache-location',
      path.join(reports, 'knip'),
    ])) === 0
  return isLaidOut && isClean && isUsed
}

async function runVitest(project: 'unit' | 'database'): Promise<Count> {
  const report = reportOf(project)
  const status = await runNode([
    'node_modules/vitest/vitest.mjs',
    'run',
    '--project',
    project,
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
  ])
  return counted(report, readVitestReport, status)
}

/** Too few checks against the outside, or a calculation without one, is a failure like another. */
function withChecks(count: Count): Count {
  const report = reportOf('unit')
  if (!fs.existsSync(report)) return count
  const { checks } = readChecks(fs.readFileSync(report, 'utf8'))
  const { faults } = countChecks(
    checks,
    catalogue.map(({ id }) => id),
  )
  for (const fault of faults) console.error(fault)
  return { ...count, failed: count.failed + faults.length }
}

// The tests make people and look at the database through the app's own server code, which `server-only` guards.
const serverCondition = { NODE_OPTIONS: '--conditions=react-server' }

async function runPlaywright(): Promise<Count> {
  const status = await runNode(['node_modules/playwright/cli.js', 'test'], serverCondition)
  return counted(reportOf('browser'), readPlaywrightReport, status)
}

/** What a runner's report says, and one failure more when its exit status says a worse thing than the report. */
function counted(report: string, read: (text: string) => Count, status: number): Count {
  if (!fs.existsSync(report)) return notRun('the runner left no report')
  const count = read(fs.readFileSync(report, 'utf8'))
  if (status === 0 || count.failed > 0) return count
  console.error(`Every test passed, but the runner ended with status ${status}.`)
  return { ...count, failed: 1 }
}

function withFloor(stage: string, count: Count): Count {
  const floors = JSON.parse(fs.readFileSync(path.join(root, 'tests', 'floor.json'), 'utf8')) as Record<string, number>
  const floor = floors[stage]
  const ran = count.passed + count.failed
  if (floor === undefined || ran >= floor) return count
  console.error(`Only ${ran} tests ran in ${stage}; tests/floor.json asks for ${floor}. Where are the others?`)
  return { ...count, failed: count.failed + 1 }
}
