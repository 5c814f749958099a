import path from 'node:path'
import { build } from 'esbuild'
import { expect, it } from 'vitest'

const root = path.resolve(import.meta.dirname, '..', '..', '..')
const entry = 'lib/ops/start-bakery.ts'

/** Files of ours that are loaded with the start, before it does anything. */
async function loadedWithStart(): Promise<string[]> {
  const { metafile } = await build({
    entryPoints: [entry],
    absWorkingDir: root,
    bundle: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
    write: false,
    outdir: 'out',
    metafile: true,
    logLevel: 'silent',
  })
  const loaded = new Set<string>()
  const follow = (file: string) => {
    if (loaded.has(file)) return
    loaded.add(file)
    for (const { path: next, kind, external } of metafile.inputs[file]?.imports ?? [])
      if (kind === 'import-statement' && !external) follow(next)
  }
  follow(entry)
  return [...loaded]
}

it('a start loads the use cases and the invented bakery only when it fills one: a later one waits for neither', async () => {
  const loaded = await loadedWithStart()
  expect(loaded).toContain('lib/ops/serve.ts')
  expect(loaded.filter((file) => /^(seed|lib\/kitchen|lib\/calc)\//.test(file))).toEqual([])
})
