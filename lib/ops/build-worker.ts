import fs from 'node:fs'
import path from 'node:path'
import { buildSync } from 'esbuild'

const entry = path.resolve(import.meta.dirname, '..', 'kitchen', 'heavy', 'worker.ts')

/**
 * Writes the file that the app's worker threads run: everything that they need in one, so that it can be loaded by its
 * path wherever the app is. Takes a fraction of a second.
 * @returns paths of the sources that are in it, from the root
 */
export function buildWorker(file: string): string[] {
  const { outputFiles, metafile } = buildSync({
    entryPoints: [entry],
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    // `server-only` is empty under this condition and throws under every other.
    conditions: ['react-server'],
    write: false,
    outfile: file,
    absWorkingDir: path.resolve(import.meta.dirname, '..', '..'),
    metafile: true,
    logLevel: 'warning',
  })
  // Whole or not at all: somebody may load it at this moment.
  const half = `${file}.${process.pid}`
  fs.mkdirSync(path.dirname(file), { recursive: true })
  fs.writeFileSync(half, outputFiles[0]?.contents ?? '')
  fs.renameSync(half, file)
  return Object.keys(metafile.inputs)
}
