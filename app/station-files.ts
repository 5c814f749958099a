import 'server-only'
import fs from 'node:fs'
import path from 'node:path'

/** Where `npm start` and `npm test` run the app: at the root, where the build has put it. */
const folder = path.join(/* turbopackIgnore: true */ process.cwd(), '.next', 'cache', 'evendough-station')

/** What holds for the tablet's own document: nothing runs but its files, and nothing is asked of anybody but this install. */
export const stationPolicy = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src 'self'",
  "style-src 'self'",
  "img-src 'self' blob:",
  "connect-src 'self'",
  "font-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ')

/** A file of the station's bundle; null for any name that the build did not write. */
export function stationFile(name: string): Buffer<ArrayBuffer> | null {
  const files = path.join(folder, 'files')
  return fs.readdirSync(files).includes(name) ? fs.readFileSync(path.join(files, name)) : null
}

/** The document, or the worker that keeps it on the tablet. */
export function stationPart(name: 'document.html' | 'worker.js'): Buffer<ArrayBuffer> {
  return fs.readFileSync(path.join(folder, name))
}
