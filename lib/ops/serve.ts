import { spawn } from 'node:child_process'
import net from 'node:net'
import path from 'node:path'
import type { Readable } from 'node:stream'
import { setTimeout as wait } from 'node:timers/promises'
import { logLines } from './log-lines'

export type ServedApp = {
  /** Ends when the app's process ends, with its exit code. */
  ended: Promise<number>
  /** Asks the app to finish its running requests and end. */
  stop(): Promise<void>
}

const root = path.resolve(import.meta.dirname, '..', '..')
const longestStopMs = 10_000
const longestStartMs = 60_000
/** An address may hold the whole question of a calculation, thousands of values; Node's own limit is 16 kB. */
const mostHeaderBytes = 262_144
/** Room for what a page makes and drops at once, MB: with Node's own 16 the longest pages spend a tenth of their time on clearing it. */
const youngMb = 64

/**
 * Demands that nobody listens where the app or its front will.
 * @param setting by which another port is chosen
 * @throws Error in one line
 */
export function mustHaveFreePort(port: number, address = '127.0.0.1', setting = 'PORT'): Promise<void> {
  return new Promise((resolve, reject) => {
    const probe = net.createServer()
    probe.on('error', (error: NodeJS.ErrnoException) => {
      const why =
        error.code === 'EADDRINUSE'
          ? `Port ${port} is in use. Stop what uses it, or choose another: ${setting}=${port + 1} npm start`
          : `Port ${port} cannot be used (${error.code}). Choose another: ${setting}=… npm start`
      reject(new Error(why))
    })
    probe.listen(port, address, () => probe.close(() => resolve()))
  })
}

/**
 * Starts the built app on loopback in a process of its own, which ends with this one however this one ends, and
 * waits until it answers.
 * @throws Error when it does not answer in a minute, or ends before
 */
export async function serveApp(port: number, env: Record<string, string>): Promise<ServedApp> {
  const child = spawn(
    process.execPath,
    [
      `--max-semi-space-size=${youngMb}`,
      `--max-http-header-size=${mostHeaderBytes}`,
      '--import',
      path.join(root, 'lib', 'ops', 'leave-with-parent.mjs'),
      path.join(root, 'node_modules', 'next', 'dist', 'bin', 'next'),
      'start',
      '-H',
      '127.0.0.1',
      '-p',
      String(port),
    ],
    {
      cwd: root,
      env: { ...process.env, ...env, NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' },
      stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
    },
  )
  let output = ''
  const listen = (stream: Readable | null, lines: ReturnType<typeof logLines>) => {
    stream?.setEncoding('utf8')
    stream?.on('data', (chunk: string) => {
      output = (output + chunk).slice(-4_000)
      lines.take(chunk)
    })
    stream?.on('end', lines.end)
  }
  // Next's own greeting, on standard output, is left out: it names an address that is not the one to open.
  listen(
    child.stdout,
    logLines((line) => console.log(line), 'dropped'),
  )
  listen(
    child.stderr,
    logLines((line) => console.error(line), 'kept'),
  )
  const ended = new Promise<number>((resolve) => child.on('exit', (code) => resolve(code ?? 1)))
  let over = false
  void ended.then(() => (over = true))
  const stop = async () => {
    if (over) return
    child.kill('SIGTERM')
    const late = await Promise.race([ended.then(() => false), wait(longestStopMs, true, { ref: false })])
    if (late) child.kill('SIGKILL')
    await ended
  }
  const deadline = Date.now() + longestStartMs
  while (!(await answers(port))) {
    if (over) throw new Error(`The app ended before it answered:\n${output}`)
    if (Date.now() > deadline) {
      await stop()
      throw new Error(`The app did not answer on port ${port} within a minute:\n${output}`)
    }
    await wait(50)
  }
  return { ended, stop }
}

async function answers(port: number): Promise<boolean> {
  try {
    const response = await fetch(`http://127.0.0.1:${port}/sign-in`, {
      redirect: 'manual',
      signal: AbortSignal.timeout(5_000),
    })
    await response.arrayBuffer()
    return response.status < 500
  } catch {
    return false
  }
}
