import { spawn } from 'node:child_process'
import { randomBytes } from 'node:crypto'
import http from 'node:http'
import path from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { pathToFileURL } from 'node:url'

const root = path.resolve(import.meta.dirname, '..', '..')
const leaveWithParent = pathToFileURL(path.join(root, 'lib/ops/leave-with-parent.mjs')).href
const startMs = 60_000
const stopMs = 10_000
const lookEveryMs = 100

export type AppServer = {
  /** Address to open; `localhost`, where a browser takes secure cookies without https. */
  url: string
  /** All that the app has written so far. */
  log(): string
  /** Ends it, by force if it does not go by itself; safe to call twice. */
  stop(): Promise<void>
}

/**
 * Starts the app as it is built on a port of this machine, and waits until it answers.
 * @throws Error with what it wrote, when it ends or does not answer in time
 */
export async function startAppServer(databaseUrl: string, port: number): Promise<AppServer> {
  const url = `http://localhost:${port}`
  const child = spawn(
    process.execPath,
    ['--import', leaveWithParent, path.join(root, 'node_modules/next/dist/bin/next'), 'start', '-H', '127.0.0.1', '-p', String(port)],
    {
      cwd: root,
      env: {
        ...process.env,
        NODE_ENV: 'production',
        NEXT_TELEMETRY_DISABLED: '1',
        DATABASE_URL: databaseUrl,
        NEXTAUTH_SECRET: randomBytes(48).toString('base64url'),
        NEXTAUTH_URL: url,
      },
      stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
    },
  )
  let written = ''
  child.stdout?.on('data', (chunk: Buffer) => (written += chunk.toString()))
  child.stderr?.on('data', (chunk: Buffer) => (written += chunk.toString()))
  const ended = new Promise<'ended'>((resolve) => {
    child.once('exit', () => resolve('ended'))
    child.once('error', (error) => {
      written += error.message
      resolve('ended')
    })
  })
  const stop = async () => {
    child.kill('SIGTERM')
    if ((await Promise.race([ended, late(stopMs)])) === 'ended') return
    child.kill('SIGKILL')
    await ended
  }
  const came = await Promise.race([ended, answering(port)])
  if (came === 'answers') return { url, log: () => written, stop }
  await stop()
  throw new Error(`The app ${came === 'ended' ? 'ended' : `did not answer within ${startMs / 1000} s`}. It wrote:\n${written}`)
}

/** Asks again and again, since nothing tells from outside when a server is ready. */
async function answering(port: number): Promise<'answers' | 'late'> {
  const until = Date.now() + startMs
  while (Date.now() < until) {
    if (await answersOnce(port)) return 'answers'
    await pause(lookEveryMs, undefined, { ref: false })
  }
  return 'late'
}

function answersOnce(port: number): Promise<boolean> {
  return new Promise((resolve) => {
    const request = http.get({ host: '127.0.0.1', port, path: '/sign-in', timeout: 5_000 }, (response) => {
      response.resume()
      resolve(true)
    })
    request.on('timeout', () => request.destroy())
    request.on('error', () => resolve(false))
  })
}

function late(afterMs: number): Promise<'late'> {
  return pause(afterMs, 'late' as const, { ref: false })
}
