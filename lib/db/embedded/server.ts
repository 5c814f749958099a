import { execFileSync, spawn } from 'node:child_process'
import fs from 'node:fs'
import net from 'node:net'
import path from 'node:path'
import { findBinaries } from './binaries'
import { isReachable } from '../is-reachable'
import { makeServerHome, type ServerHome } from './home'
import { keepUp } from './keep-up'

export type EmbeddedServer = {
  port: number
  logFile: string
  movedTo?: string
  /** From now on starts the server again, on its port and with back-off, whenever nobody answers there. */
  keepUp(say: (event: string, facts: object) => void): void
  /** Stops the server after its running statements; safe to call twice. */
  stop(): Promise<void>
}

const attempts = 3

/**
 * Starts the embedded PostgreSQL under a data folder, making it at first. A server that an unclean end left
 * running is stopped first; a lock file that it left is removed. The caller holds the data folder's lock.
 * @throws Error in words, naming the server's log
 */
export async function startEmbeddedServer(dataFolder: string, superuserPassword: string): Promise<EmbeddedServer> {
  const home = makeServerHome(dataFolder, findBinaries())
  const data = path.join(home.folder, 'data')
  const logFile = path.join(home.folder, 'server.log')
  if (!fs.existsSync(path.join(data, 'PG_VERSION'))) await initialise(home, data, superuserPassword)
  await clearFormerServer(home, data)
  for (let attempt = 1; ; attempt++) {
    const port = await findFreePort()
    if (await startOn(port, home, data, logFile)) return serverOn(port, home, data, logFile)
    const portTaken = readTail(logFile).includes('Address already in use')
    if (!portTaken || attempt === attempts) {
      throw new Error(
        `The embedded PostgreSQL did not start. Its own words are in ${logFile}; the last of them:\n${readTail(logFile)}`,
      )
    }
  }
}

/** The port on which a start that runs has the database of a data folder; null while it has none. */
export function runningPort(dataFolder: string): number | null {
  const file = path.join(makeServerHome(dataFolder, findBinaries()).folder, 'data', 'postmaster.pid')
  // Its lines are process id, folder, start, port, …
  const port = Number(fs.existsSync(file) ? fs.readFileSync(file, 'utf8').split('\n')[3] : undefined)
  return Number.isInteger(port) && port > 0 ? port : null
}

function serverOn(port: number, home: ServerHome, data: string, logFile: string): EmbeddedServer {
  let watch: { stop(): Promise<void> } | undefined
  return {
    port,
    logFile,
    movedTo: home.movedTo,
    keepUp(say) {
      watch ??= keepUp({
        isUp: () => isReachable('127.0.0.1', port),
        async start() {
          await clearFormerServer(home, data)
          return startOn(port, home, data, logFile)
        },
        say,
      })
    },
    async stop() {
      await watch?.stop()
      await stopServer(home, data)
    },
  }
}

async function startOn(port: number, home: ServerHome, data: string, logFile: string): Promise<boolean> {
  // Loopback only, no socket file: one way in, the same on every system.
  const options = `-p ${port} -c listen_addresses=127.0.0.1 -c unix_socket_directories= -c timezone=UTC -c log_timezone=UTC -c max_connections=100`
  return (
    (await run(home, 'pg_ctl', ['start', '-D', data, '-w', '-t', '60', '-s', '-l', logFile, '-o', options])).code === 0
  )
}

async function initialise(home: ServerHome, data: string, password: string): Promise<void> {
  // A folder without PG_VERSION is a half-made one: nothing was ever stored in it.
  fs.rmSync(data, { recursive: true, force: true })
  const passwordFile = path.join(home.folder, 'initial-password')
  fs.writeFileSync(passwordFile, `${password}\n`, { mode: 0o600 })
  if (home.runAs) fs.chownSync(passwordFile, home.runAs.uid, home.runAs.gid)
  try {
    const made = await run(home, 'initdb', [
      '-D',
      data,
      '--username=postgres',
      `--pwfile=${passwordFile}`,
      '--auth=scram-sha-256',
      '--encoding=UTF8',
      '--locale-provider=builtin',
      '--locale=C.UTF-8',
      '--data-checksums',
    ])
    if (made.code !== 0) {
      fs.rmSync(data, { recursive: true, force: true })
      throw new Error(`The embedded PostgreSQL could not be set up in ${home.folder}:\n${made.output}`)
    }
  } finally {
    fs.rmSync(passwordFile, { force: true })
  }
}

/** After a `kill -9` the server lives on and holds its folder; or it is gone and only its lock file is left. */
async function clearFormerServer(home: ServerHome, data: string): Promise<void> {
  const lockFile = path.join(data, 'postmaster.pid')
  if (!fs.existsSync(lockFile)) return
  const pid = Number(fs.readFileSync(lockFile, 'utf8').split('\n')[0])
  if (isServerOf(pid, data)) {
    await stopServer(home, data)
    return
  }
  // The number may belong to another program by now, which PostgreSQL could take for its former self.
  fs.rmSync(lockFile, { force: true })
}

function isServerOf(pid: number, data: string): boolean {
  if (!Number.isInteger(pid) || pid <= 0) return false
  try {
    const command = execFileSync('ps', ['-ww', '-o', 'args=', '-p', String(pid)], { encoding: 'utf8' })
    return command.includes('postgres') && command.includes(data)
  } catch {
    return false
  }
}

async function stopServer(home: ServerHome, data: string): Promise<void> {
  if (!fs.existsSync(path.join(data, 'postmaster.pid'))) return
  const stopped = await run(home, 'pg_ctl', ['stop', '-D', data, '-m', 'fast', '-w', '-t', '30', '-s'])
  if (stopped.code === 0 || !fs.existsSync(path.join(data, 'postmaster.pid'))) return
  await run(home, 'pg_ctl', ['stop', '-D', data, '-m', 'immediate', '-w', '-t', '30', '-s'])
}

function run(
  home: ServerHome,
  program: 'initdb' | 'pg_ctl',
  args: string[],
): Promise<{ code: number; output: string }> {
  const file = path.join(home.binaries, 'bin', program)
  for (const name of ['initdb', 'pg_ctl', 'postgres']) ensureExecutable(path.join(home.binaries, 'bin', name))
  return new Promise((resolve, reject) => {
    const child = spawn(file, args, {
      // A folder that every user may stand in; messages in one language, since we read them.
      cwd: '/',
      env: { NODE_ENV: process.env.NODE_ENV, PATH: process.env.PATH, LC_ALL: 'C', TZ: 'UTC' },
      stdio: ['ignore', 'pipe', 'pipe'],
      ...home.runAs,
    })
    let output = ''
    child.stdout.on('data', (chunk: Buffer) => (output += chunk.toString()))
    child.stderr.on('data', (chunk: Buffer) => (output += chunk.toString()))
    child.on('error', reject)
    // Not 'close': the server that pg_ctl leaves behind keeps the pipes open.
    child.on('exit', (code) => resolve({ code: code ?? 1, output }))
  })
}

/** npm may have unpacked the programs without their mode; who is not their owner may not set it, and need not. */
function ensureExecutable(file: string): void {
  if ((fs.statSync(file).mode & 0o555) !== 0o555) fs.chmodSync(file, 0o755)
}

function findFreePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = net.createServer()
    probe.on('error', reject)
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address()
      probe.close(() =>
        typeof address === 'object' && address ? resolve(address.port) : reject(new Error('no free port')),
      )
    })
  })
}

function readTail(file: string): string {
  return fs.existsSync(file) ? fs.readFileSync(file, 'utf8').trimEnd().split('\n').slice(-8).join('\n') : '(no log)'
}
