import { expect, test } from 'vitest'
import { isThere, sourceFilesIn } from '../../support/source-files'

/** Only types, numbers with their sources, or entries of the catalogue, whose worked examples are run by its own test. */
const exemptNames = /\/(types|constants|([^/]+-)?entries)\.ts$/
const exempt = ['lib/calc/error.ts', 'lib/calc/entry.ts']

const calculations = sourceFilesIn('lib/calc').filter((file) => !exemptNames.test(file) && !exempt.includes(file))
const rules = sourceFilesIn('lib/kitchen').filter((file) => file.endsWith('/rules.ts'))

test.each([...calculations, ...rules])('%s has a test of its own', (file) => {
  const twin = file.replace(/^lib\//, 'tests/unit/').replace(/\.ts$/, '.test.ts')
  expect(isThere(twin), `${twin} is missing`).toBe(true)
})

test.each(exempt)('%s, which needs none, is there', (file) => {
  expect(isThere(file)).toBe(true)
})
