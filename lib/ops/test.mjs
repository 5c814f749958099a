// `npm test`: what is missing is installed, then lib/ops/test-stages.ts runs the stages.
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { prepare, root } from './bootstrap.mjs'

let counted = false
// Whatever reads the last line finds a count there, also when the packages could not be installed.
process.on('exit', (code) => {
  if (counted) return
  if (code === 0) process.exitCode = 1
  console.log('0 passed, 1 failed')
})

prepare()
const { register } = await import('tsx/esm/api')
register()
const { testStages } = await import(pathToFileURL(path.join(root, 'lib', 'ops', 'test-stages.ts')).href)
const { passed, failed } = await testStages(process.argv.slice(2))
process.exitCode = failed === 0 ? 0 : 1
counted = true
console.log(`${passed} passed, ${failed} failed`)
