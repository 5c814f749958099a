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
  leave(`Evendough needs Node.js ${leastNode.join('.')} or newer; this is ${version}. Install a current LTS release of Node.js, then run this again.`)
}

const stamp = path.join(root, 'node_modules', '.evendough-installed')

/** Installs the packages of the lock file unless they are there already. What it says is no output of the script that wants them. */
function ensureInstalled() {
  const lock = fs.readFileSync(path.join(root, 'package-lock.json'))
  const wanted = createHash('sha256').update(lock).update(process.version).digest('hex')
  if (fs.existsSync(stamp) && fs.readFileSync(stamp, 'utf8') === wanted) return
  console.error('Installing packages (first time, or the list changed) …')
  // No package's install script is needed: the ones that would run fetch things that we do without.
  const npm = spawnSync('npm', ['ci', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'], { cwd: root, stdio: ['ignore', process.stderr.fd, process.stderr.fd] })
  if (npm.error) leave(`npm could not be run (${npm.error.message}). npm comes with Node.js: check that it is on the PATH.`)
  if (npm.status !== 0) leave('The packages could not be installed; npm says why above. Check the network and run this again.')
  fs.writeFileSync(stamp, wanted)
}

/** Generates the database client from the schema unless the one there is of this schema. */
function ensureGenerated() {
  const schema = fs.readFileSync(path.join(root, 'prisma', 'schema.prisma'))
  const lock = fs.readFileSync(path.join(root, 'package-lock.json'))
  const wanted = createHash('sha256').update(schema).update(lock).digest('hex')
  const folder = path.join(root, 'lib', 'db', 'generated')
  const mark = path.join(folder, '.made-from')
  if (fs.existsSync(mark) && fs.readFileSync(mark, 'utf8') === wanted) return
  const made = spawnSync(process.execPath, [path.join(root, 'node_modules', 'prisma', 'build', 'index.js'), 'generate'], {
    cwd: root,
    encoding: 'utf8',
    // Prisma would fetch its native schema engine, which `generate` does not use; any program's path keeps it from that.
    env: { ...process.env, PRISMA_SCHEMA_ENGINE_BINARY: process.execPath, PRISMA_HIDE_UPDATE_MESSAGE: '1', CHECKPOINT_DISABLE: '1' },
  })
  if (made.status !== 0) leave(`The database client could not be generated:\n${made.stdout}\n${made.stderr}`)
  fs.writeFileSync(mark, wanted)
}

/** Everything that must be there before TypeScript of ours can run. */
export function prepare() {
  mustHaveNode()
  ensureInstalled()
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
