import { spawn } from 'node:child_process'
import { createHash } from 'node:crypto'
import fs from 'node:fs'
import path from 'node:path'

const root = path.resolve(import.meta.dirname, '..', '..')
const stamp = path.join(root, '.next', 'evendough-built-from')
const sources = ['app', 'lib', 'prisma/schema.prisma', 'proxy.ts', 'next.config.mjs', 'postcss.config.mjs', 'tsconfig.json', 'package-lock.json']

/** Builds the app unless the build that is there was made from these very sources. @throws Error with the build's own words */
export async function ensureBuilt(): Promise<'built' | 'current'> {
  const wanted = hashSources()
  if (fs.existsSync(stamp) && fs.readFileSync(stamp, 'utf8') === wanted) return 'current'
  console.log('Building (first time, or the sources changed; about a minute) …')
  fs.rmSync(stamp, { force: true })
  const { code, output } = await build()
  if (code !== 0) throw new Error(`The build failed:\n${output}`)
  fs.writeFileSync(stamp, wanted)
  return 'built'
}

function build(): Promise<{ code: number; output: string }> {
  const child = spawn(process.execPath, [path.join(root, 'node_modules', 'next', 'dist', 'bin', 'next'), 'build'], {
    cwd: root,
    env: { ...process.env, NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  let output = ''
  child.stdout.on('data', (chunk: Buffer) => (output += chunk.toString()))
  child.stderr.on('data', (chunk: Buffer) => (output += chunk.toString()))
  return new Promise((resolve, reject) => {
    child.on('error', reject)
    child.on('close', (code) => resolve({ code: code ?? 1, output }))
  })
}

/** One hash of every source file's path and content. */
function hashSources(): string {
  const hash = createHash('sha256')
  for (const source of sources) {
    for (const file of filesUnder(path.join(root, source))) {
      hash.update(path.relative(root, file)).update('\0').update(fs.readFileSync(file)).update('\0')
    }
  }
  return hash.digest('hex')
}

function filesUnder(place: string): string[] {
  if (!fs.statSync(place).isDirectory()) return [place]
  return fs
    .readdirSync(place, { withFileTypes: true })
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) => (entry.isDirectory() ? filesUnder(path.join(place, entry.name)) : [path.join(place, entry.name)]))
}
