import { spawn, type ChildProcess } from 'node:child_process'
import path from 'node:path'
import { pathToFileURL } from 'node:url'

const root = path.resolve(import.meta.dirname, '..', '..')
const leaveWithParent = pathToFileURL(path.join(import.meta.dirname, 'leave-with-parent.mjs')).href

export type Started = {
  child: ChildProcess
  /** Everything it has printed so far. */
  output(): string
  /** Waits for a line that matches, and gives what matched; fails when the process ends before. */
  until(pattern: RegExp): Promise<RegExpMatchArray>
  /** Its exit code, once it has ended. */
  ended: Promise<number | null>
}

/** Runs `npm start`'s own script as a person would, with settings of the caller's own. It ends when we do, however we end. */
export function spawnStart(
  env: Record<string, string | undefined>,
  args: readonly string[] = [],
  as?: { uid: number; gid: number },
): Started {
  const settings: NodeJS.ProcessEnv = {
    ...process.env,
    DATABASE_URL: undefined,
    OWNER_DATABASE_URL: undefined,
    NODE_OPTIONS: undefined,
    ...env,
  }
  const child = spawn(
    process.execPath,
    ['--import', leaveWithParent, path.join(root, 'lib', 'ops', 'start.mjs'), ...args],
    {
      cwd: root,
      env: settings,
      stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
      ...as,
    },
  )
  let output = ''
  const listeners = new Set<() => void>()
  const take = (chunk: Buffer) => {
    output += chunk.toString()
    for (const listener of listeners) listener()
  }
  child.stdout?.on('data', take)
  child.stderr?.on('data', take)
  const ended = new Promise<number | null>((resolve) => child.on('close', (code) => resolve(code)))
  return {
    child,
    ended,
    output: () => output,
    until: (pattern) =>
      new Promise((resolve, reject) => {
        const look = () => {
          const found = output.match(pattern)
          if (!found) return
          listeners.delete(look)
          resolve(found)
        }
        listeners.add(look)
        look()
        void ended.then((code) => reject(new Error(`ended with ${code} before ${pattern}:\n${output}`)))
      }),
  }
}
