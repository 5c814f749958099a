import { spawnSync } from 'node:child_process'
import path from 'node:path'

/** What a script of peers/ ends with when R lacks a package that it needs. */
const missingPackage = 3

/**
 * Milliseconds that R takes for the same, by a script of peers/ that times itself.
 * @param input standard input of the script
 * @returns null where R or a package is not there
 * @throws Error when the script fails otherwise
 */
export function peerMs(script: string, input = ''): number | null {
  const { error, status, stdout, stderr } = spawnSync(
    'Rscript',
    ['--vanilla', path.join(import.meta.dirname, 'peers', script)],
    { input, encoding: 'utf8' },
  )
  if ((error && 'code' in error && error.code === 'ENOENT') || status === missingPackage) return null
  const ms = Number(stdout.trim())
  if (error || status !== 0 || !(ms > 0)) throw new Error(`${script}: ${error?.message ?? stderr.trim()}`)
  return ms
}

/** Two cells of a table: what a peer takes, and ours as a share of it. */
export function besidePeer(ms: number, peer: number | null): [string, string] {
  return peer === null ? ['', ''] : [peer.toFixed(1), (ms / peer).toFixed(3)]
}
