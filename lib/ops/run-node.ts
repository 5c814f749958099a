import { spawn } from 'node:child_process'
import path from 'node:path'
import { pathToFileURL } from 'node:url'

const root = path.resolve(import.meta.dirname, '..', '..')
const leaveWithParent = pathToFileURL(path.join(import.meta.dirname, 'leave-with-parent.mjs')).href

/**
 * Runs a Node program from the root of the project, its output on our screen. It ends when we do, however we end.
 * @param args program and arguments
 * @param settings environment to set on top of ours; `undefined` takes one out
 * @returns exit status; 1 when a signal ended it
 */
export function runNode(args: readonly string[], settings: Record<string, string | undefined> = {}): Promise<number> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['--import', leaveWithParent, ...args], {
      cwd: root,
      env: { ...process.env, ...settings },
      stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
    })
    child.on('error', reject)
    child.on('exit', (code) => {
      resolve(code ?? 1)
    })
  })
}
