import fs from 'node:fs'
import path from 'node:path'
import { z } from 'zod'
import { setTable } from './bench/table'
import { runNode } from './run-node'

const root = path.resolve(import.meta.dirname, '..', '..')
const folder = path.join(root, '.test', 'coverage')
/** What a mistake in would cost a bakery most; pages are looked at by the browser tests, which are not counted here. */
const rooms = ['lib/calc', 'lib/kitchen', 'lib/db', 'lib/auth']
/** Files of which less is run than this are named. */
const leastPct = 80

const part = z.object({ total: z.number(), covered: z.number() })
const summary = z.record(z.string(), z.object({ lines: part, branches: part }))
type Part = z.output<typeof part>

/**
 * `npm run coverage`: runs the unit and the database tests, and prints what share of the lines and branches of each room
 * they run, and the files that they run least of.
 * @throws Error when a test fails
 */
export async function coverage(): Promise<void> {
  fs.rmSync(folder, { recursive: true, force: true })
  const status = await runNode([
    'node_modules/vitest/vitest.mjs',
    'run',
    '--reporter=dot',
    '--coverage.enabled',
    '--coverage.reporter=json-summary',
    `--coverage.reportsDirectory=${folder}`,
    ...rooms.map((room) => `--coverage.include=${room}/**/*.ts`),
    '--coverage.exclude=lib/db/generated/**',
  ])
  const report = path.join(folder, 'coverage-summary.json')
  if (!fs.existsSync(report)) throw new Error('The runner left no report.')
  const files = Object.entries(summary.parse(JSON.parse(fs.readFileSync(report, 'utf8'))))
    .filter(([file]) => file !== 'total')
    .map(([file, { lines, branches }]) => ({ file: path.relative(root, file), lines, branches }))
  const ofRoom = (room: string) => files.filter(({ file }) => file.startsWith(`${room}/`))
  const rows = rooms.map((room) => [
    room,
    String(ofRoom(room).length),
    sharePct(ofRoom(room).map(({ lines }) => lines)),
    sharePct(ofRoom(room).map(({ branches }) => branches)),
  ])
  console.log(
    setTable({
      title: 'coverage',
      notes: ['Of the unit and the database tests, %.'],
      columns: ['room', 'files', 'lines', 'branches'],
      rows,
    }),
  )
  const least = files.filter(({ lines }) => lines.covered < (lines.total * leastPct) / 100)
  for (const { file, lines } of least) console.log(`${file}: ${sharePct([lines])} % of its lines`)
  if (status !== 0) throw new Error('Not every test passed.')
}

function sharePct(parts: readonly Part[]): string {
  const sum = (of: (part: Part) => number) => parts.reduce((all, part) => all + of(part), 0)
  const total = sum((each) => each.total)
  return total === 0 ? '' : ((100 * sum((each) => each.covered)) / total).toFixed(1)
}
