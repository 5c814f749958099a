// `npm test`: what is missing is installed, then lib/ops/test-stages.ts runs the stages. With --long (`npm run
// test:long`) properties and simulations draw some twenty times as much; the stages that have such are run.
import { importOps, prepare, useTypeScript } from './bootstrap.mjs'

let counted = false
// Whatever reads the last line finds a count there, also when the packages could not be installed.
process.on('exit', (code) => {
  if (counted) return
  if (code === 0) process.exitCode = 1
  console.log('0 passed, 1 failed')
})

prepare({ withTests: true })
await useTypeScript()
const { testStages } = await importOps('test-stages')
const named = process.argv.slice(2).filter((argument) => argument !== '--long')
const isLong = process.argv.includes('--long')
if (isLong) process.env.EVENDOUGH_LONG = '1'
const { passed, failed } = await testStages(isLong && named.length === 0 ? ['unit', 'database'] : named)
process.exitCode = failed === 0 ? 0 : 1
counted = true
console.log(`${passed} passed, ${failed} failed`)
