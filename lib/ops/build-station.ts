import { createHash } from 'node:crypto'
import fs from 'node:fs'
import path from 'node:path'
import { buildSync, type BuildOptions } from 'esbuild'
import { stationDocument } from '../station/document'

const root = path.resolve(import.meta.dirname, '..', '..')
const station = path.join(root, 'lib', 'station')
/** Under which address the files are served; the worker keeps them on the tablet. */
const publicPath = '/station/files/'

/** How all script of a tablet is bundled. */
export const stationBuild = {
  bundle: true,
  format: 'esm',
  target: ['es2022', 'chrome109', 'safari16.4', 'firefox115'],
  minify: true,
  jsx: 'automatic',
  define: {
    'process.env.NODE_ENV': '"production"',
    // Nobody looks into a tablet with tools; without this and what is said to a console it is a kilobyte less.
    __REACT_DEVTOOLS_GLOBAL_HOOK__: 'undefined',
  },
  drop: ['console'],
  write: false,
  absWorkingDir: root,
  metafile: true,
  legalComments: 'none',
  logLevel: 'warning',
} as const satisfies BuildOptions

/**
 * Writes what a tablet loads: the document, its script, style and fonts under names by their content, and the service
 * worker that keeps just these. Takes a second.
 * @returns paths of the sources that are in the script, from the root
 */
export function buildStation(folder: string): string[] {
  const page = buildSync({
    ...stationBuild,
    entryPoints: { station: path.join(station, 'main.tsx'), look: path.join(station, 'look.css') },
    outdir: path.join(folder, 'files'),
    entryNames: '[name]-[hash]',
    assetNames: '[name]-[hash]',
    chunkNames: '[name]-[hash]',
    // What is imported late is a file of its own.
    splitting: true,
    publicPath,
    loader: { '.woff2': 'file', '.wasm': 'file' },
    // The library's own small form; by its name the bundle gets one for old browsers.
    alias: { dexie: path.join(root, 'node_modules/dexie/dist/modern/dexie.min.mjs') },
    banner: { css: tokens() },
  })
  const files = page.outputFiles.map(({ path: file, contents }) => ({ name: path.basename(file), contents }))
  const named = (start: string, end: string) => {
    const found = files.find(({ name }) => name.startsWith(start) && name.endsWith(end))
    if (!found) throw new Error(`The station's bundle has no ${start}…${end}`)
    return `${publicPath}${found.name}`
  }
  const html = stationDocument({ script: named('station-', '.js'), style: named('look-', '.css') })
  const kept = files.map(({ name }) => `${publicPath}${name}`)
  const build = createHash('sha256').update(html).update(kept.join('\n')).digest('hex').slice(0, 16)
  const worker = buildSync({
    ...stationBuild,
    entryPoints: [path.join(station, 'worker', 'worker.ts')],
    define: { ...stationBuild.define, BUILD: JSON.stringify(build), KEPT_FILES: JSON.stringify(kept) },
  })
  fs.mkdirSync(path.join(folder, 'files'), { recursive: true })
  // What names a file comes after it.
  for (const { name, contents } of files) writeWhole(path.join(folder, 'files', name), contents)
  writeWhole(path.join(folder, 'document.html'), html)
  writeWhole(path.join(folder, 'worker.js'), worker.outputFiles[0]?.contents ?? '')
  return Object.keys(page.metafile.inputs)
}

/** The desk's colours, type and measures, as custom properties: its own style is where they stand. */
function tokens(): string {
  const css = fs.readFileSync(path.join(root, 'app', 'globals.css'), 'utf8')
  const theme = /^@theme static \{\n([\s\S]*?)^\}/m.exec(css)?.[1]
  if (!theme) throw new Error('app/globals.css has no @theme static block to take colours from')
  return `:root{${theme}}`
}

/** Whole or not at all: somebody may read it at this moment. */
function writeWhole(file: string, contents: string | Uint8Array): void {
  const half = `${file}.${process.pid}`
  fs.writeFileSync(half, contents)
  fs.renameSync(half, file)
}
