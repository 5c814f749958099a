import fs from 'node:fs'
import { createRequire } from 'node:module'
import path from 'node:path'
import type { SchemaEngine } from '@prisma/schema-engine-wasm'

const require = createRequire(import.meta.url)
let loaded: Promise<typeof SchemaEngine> | undefined

type Bindings = { SchemaEngine: typeof SchemaEngine; __wbg_set_wasm(exports: WebAssembly.Exports): void }

/** Prisma's schema engine as WebAssembly: the same migrations as its native one, with nothing to download. */
export function loadSchemaEngine(): Promise<typeof SchemaEngine> {
  loaded ??= load()
  return loaded
}

async function load(): Promise<typeof SchemaEngine> {
  const bindingsFile = require.resolve('@prisma/schema-engine-wasm/schema_engine_bg')
  const bindings = (await import('@prisma/schema-engine-wasm/schema_engine_bg')) as unknown as Bindings
  const module = new WebAssembly.Module(fs.readFileSync(path.join(path.dirname(bindingsFile), 'schema_engine_bg.wasm')))
  const instance = new WebAssembly.Instance(module, {
    './schema_engine_bg.js': bindings as unknown as WebAssembly.ModuleImports,
  })
  bindings.__wbg_set_wasm(instance.exports)
  const start = instance.exports.__wbindgen_start
  if (typeof start === 'function') (start as () => void)()
  return bindings.SchemaEngine
}
