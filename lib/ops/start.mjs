// `npm start`: what is missing is installed, then lib/ops/start-bakery.ts takes over.
import { importOps, prepare, useTypeScript } from './bootstrap.mjs'

prepare()
await useTypeScript()
const { startBakery } = await importOps('start-bakery')
await startBakery(process.argv.slice(2))
