// Runs before any package is there, so it uses Node's own modules alone.
import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import fs from 'node:fs'
import path from 'node:path'
import { pathToFileURL } from 'node:url'

export const root = path.resolve(import.meta.dirname, '..', '..')
const leastNode = [20, 19]

/** Ends the process with one line that says what is wrong and what to do; 2 is for what the person gave. */
export function leave(message, exitStatus = 1) {
  console.error(message)
  process.exit(exitStatus)
}

/**
 * Demands a Node.js that the packages run on.
 * @public a test calls it in a process of its own
 */
export function mustHaveNode(version = process.versions.node) {
  const [major, minor] = version.split('.').map(Number)
  if (major > leastNode[0] || (major === leastNode[0] && minor >= leastNode[1])) return
  leave(
    `Evendough needs Node.js ${leastNode.join('.')} or newer; this is ${version}. Install a current LTS release of Node.js, then run this again.`,
  )
}

const modules = path.join(root, 'node_modules')
// Each says for which lock file its packages are there. Within the folder, so that they go with it.
const stamps = {
  toRun: path.join(modules, '.evendough-installed'),
  toTest: path.join(modules, '.evendough-installed-to-test'),
}
// No package's install script is needed: the ones that would run fetch things that we do without.
const quietly = ['--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error']

/**
 * Installs the packages of the lock file unless they are there already: those that the app needs to be built and run, and
 * those of the tests where they are asked for. What it says is no output of the script that wants them.
 */
function ensureInstalled(withTests) {
  const lock = fs.readFileSync(path.join(root, 'package-lock.json'))
  const wanted = createHash('sha256').update(lock).update(process.version).digest('hex')
  const has = (stamp) => fs.existsSync(stamp) && fs.readFileSync(stamp, 'utf8') === wanted
  if (has(stamps.toRun) && (!withTests || has(stamps.toTest))) return
  if (has(stamps.toRun)) {
    // `npm ci` would begin by taking everything away, also from under an app that runs.
    console.error('Installing what the tests need beside it …')
    npm('install', '--no-save', '--include=dev')
  } else {
    console.error('Installing packages (first time, or the list changed) …')
    npm('ci', ...(withTests ? ['--include=dev'] : ['--omit=dev']))
  }
  fs.writeFileSync(stamps.toRun, wanted)
  if (withTests) fs.writeFileSync(stamps.toTest, wanted)
}

function npm(...args) {
  const done = spawnSync('npm', [...args, ...quietly], {
    cwd: root,
    stdio: ['ignore', process.stderr.fd, process.stderr.fd],
  })
  if (done.error)
    leave(`npm could not be run (${done.error.message}). npm comes with Node.js: check that it is on the PATH.`)
  if (done.status !== 0)
    leave('The packages could not be installed; npm says why above. Check the network and run this again.')
}

/** Generates the database client from the schema unless the one there is of this schema. */
function ensureGenerated() {
  const schema = fs.readFileSync(path.join(root, 'prisma', 'schema.prisma'))
  const lock = fs.readFileSync(path.join(root, 'package-lock.json'))
  const wanted = createHash('sha256').update(schema).update(lock).digest('hex')
  const folder = path.join(root, 'lib', 'db', 'generated')
  const mark = path.join(folder, '.made-from')
  if (fs.existsSync(mark) && fs.readFileSync(mark, 'utf8') === wanted) return
  const made = spawnSync(
    process.execPath,
    [path.join(root, 'node_modules', 'prisma', 'build', 'index.js'), 'generate'],
    {
      cwd: root,
      encoding: 'utf8',
      // Prisma would fetch its native schema engine, which `generate` does not use; any program's path keeps it from that.
      env: {
        ...process.env,
        PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
        PRISMA_HIDE_UPDATE_MESSAGE: '1',
        CHECKPOINT_DISABLE: '1',
      },
    },
  )
  if (made.status !== 0) leave(`The database client could not be generated:\n${made.stdout}\n${made.stderr}`)
  fs.writeFileSync(mark, wanted)
}

/** Everything that must be there before TypeScript of ours can run, and before tests can where they are to. */
export function prepare({ withTests = false } = {}) {
  mustHaveNode()
  ensureInstalled(withTests)
  ensureGenerated()
}

/** Lets this process import our TypeScript, and take `server-only` for what it is here: on a server. */
export async function useTypeScript() {
  const { register } = await import('node:module')
  const hook = `export const resolve = (name, context, next) =>
    name === 'server-only' ? { url: 'data:text/javascript,', shortCircuit: true } : next(name, context)`
  const { register: registerTypeScript } = await import('tsx/esm/api')
  registerTypeScript()
  register(`data:text/javascript,${encodeURIComponent(hook)}`)
}

/** Imports a TypeScript file of lib/ops by its name. */
export function importOps(name) {
  return import(pathToFileURL(path.join(root, 'lib', 'ops', `${name}.ts`)).href)
}
