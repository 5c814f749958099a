// Runs one function of a TypeScript file of lib/ops: `node lib/ops/run-script.mjs new-migration newMigration …`.
import { importOps, leave, prepare, useTypeScript } from './bootstrap.mjs'

// Those that run tests.
const runTests = ['checks', 'coverage']
const [file, name, ...args] = process.argv.slice(2)
prepare({ withTests: runTests.includes(file) })
await useTypeScript()
const module = await importOps(file)
try {
  await module[name](...args)
} catch (error) {
  leave(error instanceof Error ? error.message : String(error), error?.exitStatus)
}
