import { createHash } from 'node:crypto'
import fs from 'node:fs'
import path from 'node:path'
import { buildStation } from './build-station'
import { buildWorker } from './build-worker'
import { runNode } from './run-node'

const root = path.resolve(import.meta.dirname, '..', '..')
// Inside the build's own folder: whoever removes the build removes the claim that it is current.
const stampFile = path.join(root, '.next', 'evendough-built-from')
/** What the app's worker threads run, for the setting EVENDOUGH_WORKER. A build of the app leaves this folder alone. */
export const builtWorker = path.join(root, '.next', 'cache', 'evendough-worker.mjs')
/** What tablets load, where `app/station-files.ts` finds it. */
const builtStation = path.join(root, '.next', 'cache', 'evendough-station')

const sources = [
  'app',
  'lib',
  'prisma',
  'proxy.ts',
  'next.config.mjs',
  'postcss.config.mjs',
  'tsconfig.json',
  'package-lock.json',
]
// Made from prisma/schema.prisma and the lock file, which are looked at themselves.
const generated = path.join('lib', 'db', 'generated')

/**
 * Builds the app for production, and before it the file of its workers and what tablets load, unless what is there is of these very sources.
 * Needs no database. When this returns its promise what is built before is there.
 * @throws Error when the build fails; what it said is on the screen
 */
export async function ensureBuilt(): Promise<'built' | 'current'> {
  const wanted = hashOfSources()
  const isCurrent = fs.existsSync(stampFile) && fs.readFileSync(stampFile, 'utf8') === wanted
  if (isCurrent && fs.existsSync(builtWorker) && fs.existsSync(builtStation)) return 'current'
  console.log('Building the app (first time, or its sources changed; about half a minute) …')
  fs.rmSync(stampFile, { force: true })
  buildWorker(builtWorker)
  buildStation(builtStation)
  const status = await runNode(['node_modules/next/dist/bin/next', 'build'], {
    NODE_ENV: 'production',
    NEXT_TELEMETRY_DISABLED: '1',
    // A build that reached for a database would build in what one machine held.
    DATABASE_URL: undefined,
    OWNER_DATABASE_URL: undefined,
  })
  if (status !== 0) throw new Error('The app could not be built; the build says why above.')
  fs.writeFileSync(stampFile, wanted)
  return 'built'
}

function hashOfSources(): string {
  const hash = createHash('sha256').update(process.version)
  for (const file of sources.flatMap(filesIn)) {
    // Name and length first, so that text cannot move from one file to the next unseen.
    const content = fs.readFileSync(path.join(root, file))
    hash.update(JSON.stringify([file, content.length])).update(content)
  }
  return hash.digest('hex')
}

/** Files of a file or folder, by their path from the root, in one order everywhere. */
function filesIn(entry: string): string[] {
  const at = path.join(root, entry)
  if (entry === generated || !fs.existsSync(at)) return []
  if (!fs.statSync(at).isDirectory()) return [entry]
  return fs
    .readdirSync(at)
    .sort()
    .flatMap((name) => filesIn(path.join(entry, name)))
}
