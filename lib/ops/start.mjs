// `npm start`: what is missing is installed, then lib/ops/start-bakery.ts takes over.
import { pathToFileURL } from 'node:url'
import path from 'node:path'
import { prepare, root } from './bootstrap.mjs'

prepare()
const { register } = await import('tsx/esm/api')
register()
const { startBakery } = await import(pathToFileURL(path.join(root, 'lib', 'ops', 'start-bakery.ts')).href)
await startBakery(process.argv.slice(2))
