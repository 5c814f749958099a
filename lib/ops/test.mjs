// `npm test`: what is missing is installed, then lib/ops/test-stages.ts runs the stages.
import { importOps, prepare, useTypeScript } from './bootstrap.mjs'

let counted = false
// Whatever reads the last line finds a count there, also when the packages could not be installed.
process.on('exit', (code) => {
  if (counted) return
  if (code === 0) process.exitCode = 1
  console.log('0 passed, 1 failed')
})

prepare()
await useTypeScript()
const { testStages } = await importOps('test-stages')
const { passed, failed } = await testStages(process.argv.slice(2))
process.exitCode = failed === 0 ? 0 : 1
counted = true
console.log(`${passed} passed, ${failed} failed`)
