import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { buildWorker } from '../../lib/ops/build-worker'

/** Vitest's global setup: the workers' file as the sources are now, without a build of the app, for this run alone. */
export default function setup(): () => void {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evendough-worker-'))
  process.env.EVENDOUGH_WORKER = path.join(folder, 'worker.mjs')
  buildWorker(process.env.EVENDOUGH_WORKER)
  return () => fs.rmSync(folder, { recursive: true, force: true })
}
