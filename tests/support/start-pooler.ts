import { spawn } from 'node:child_process'
import fs from 'node:fs'
import net from 'node:net'
import os from 'node:os'
import path from 'node:path'
import { findFreePort } from '../../lib/ops/find-free-port'

export type Pooler = { port: number; stop(): Promise<void> }

/** Where PgBouncer is installed on this machine, or undefined. */
export function findPooler(): string | undefined {
  const folders = [...(process.env.PATH ?? '').split(path.delimiter), '/usr/sbin', '/usr/local/sbin']
  return folders.map((folder) => path.join(folder, 'pgbouncer')).find((file) => fs.existsSync(file))
}

/**
 * Starts a PgBouncer of the test's own before a PostgreSQL on this machine, in a folder of its own.
 * @param settings on top of where it listens and whom it lets in: `pool_mode`, …
 * @throws Error with what it said when it does not listen
 */
export async function startPooler(
  program: string,
  to: { port: number; users: Record<string, string> },
  settings: Record<string, string>,
): Promise<Pooler> {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evendough-pooler-'))
  const port = await findFreePort()
  const users = path.join(folder, 'users.txt')
  const config = path.join(folder, 'pgbouncer.ini')
  fs.writeFileSync(
    users,
    Object.entries(to.users)
      .map(([name, password]) => `"${name}" "${password}"\n`)
      .join(''),
  )
  const lines = {
    listen_addr: '127.0.0.1',
    listen_port: port,
    unix_socket_dir: '',
    auth_type: 'scram-sha-256',
    auth_file: users,
    ...settings,
  }
  fs.writeFileSync(
    config,
    `[databases]\n* = host=127.0.0.1 port=${to.port}\n[pgbouncer]\n${Object.entries(lines)
      .map(([key, value]) => `${key} = ${value}\n`)
      .join('')}`,
  )
  // It refuses to run as root.
  const nobody = process.getuid?.() === 0 ? { uid: 65_534, gid: 65_534 } : undefined
  if (nobody) for (const made of [folder, users, config]) fs.chownSync(made, nobody.uid, nobody.gid)
  const child = spawn(program, [config], { stdio: ['ignore', 'ignore', 'pipe'], cwd: folder, ...nobody })
  let said = ''
  child.stderr.on('data', (chunk: Buffer) => (said += chunk.toString()))
  let over = false
  const ended = new Promise<void>((resolve) => {
    for (const event of ['exit', 'error'] as const) {
      child.on(event, () => {
        over = true
        resolve()
      })
    }
  })
  const stop = async () => {
    child.kill('SIGQUIT')
    await ended
    fs.rmSync(folder, { recursive: true, force: true })
  }
  while (!(await listens(port))) {
    if (!over) continue
    await stop()
    throw new Error(`PgBouncer ended:\n${said}`)
  }
  return { port, stop }
}

function listens(port: number): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = net.connect({ host: '127.0.0.1', port })
    socket.on('error', () => resolve(false))
    socket.on('connect', () => {
      socket.destroy()
      resolve(true)
    })
  })
}
