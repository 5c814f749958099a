// Runs one function of a TypeScript file of ours: `node lib/ops/run-script.mjs new-migration newMigration …`.
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { prepare, root } from './bootstrap.mjs'

prepare()
const { register } = await import('tsx/esm/api')
register()
const [file, name, ...args] = process.argv.slice(2)
const module = await import(pathToFileURL(path.join(root, 'lib', 'ops', `${file}.ts`)).href)
await module[name](...args)
