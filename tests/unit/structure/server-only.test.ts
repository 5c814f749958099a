import { describe, expect, test } from 'vitest'
import { importsOf, sourceFilesIn, textOf } from '../../support/source-files'

/** Shared with the browser, by name: schemas, rules, words for refusals, the shape of a result. */
const sharedNames = /(\.input|\/rules|\/messages|\/result)\.ts$/

/** Run outside the app, in plain Node, where the mark would throw. Nothing that the app runs may import them. */
const outside = [
  'lib/db/embedded/',
  'lib/db/append-only',
  'lib/db/folder-lock',
  'lib/db/grants',
  'lib/db/is-reachable',
  'lib/db/kept-by-triggers',
  'lib/db/migrate',
  'lib/db/migration-adapter',
  'lib/db/schema-engine',
  'lib/db/tables-without-bakery',
]
const runsOutside = (file: string) =>
  outside.some((start) => file === start || file === `${start}.ts` || (start.endsWith('/') && file.startsWith(start)))

const guarded = ['lib/db', 'lib/auth', 'lib/documents', 'lib/kitchen'].flatMap(sourceFilesIn)
const shared = guarded.filter((file) => sharedNames.test(file))
const marked = guarded.filter((file) => !sharedNames.test(file) && !runsOutside(file))

test('there are files to look at', () => {
  expect(shared.length).toBeGreaterThan(5)
  expect(marked.length).toBeGreaterThan(30)
})

test.each(marked)('%s is kept out of the browser by its first import', (file) => {
  expect(/^import .*$/m.exec(textOf(file))?.[0]).toBe("import 'server-only'")
})

test.each(shared)('%s brings nothing of the server into the browser', (file) => {
  const ofServer = importsOf(file).filter(
    (wanted) => wanted === 'server-only' || wanted.startsWith('node:') || marked.includes(`${wanted}.ts`),
  )
  expect(ofServer).toEqual([])
})

describe('what runs outside the app', () => {
  test.each(outside)('%s is there', (start) => {
    expect(guarded.filter((file) => file === `${start}.ts` || file.startsWith(start))).not.toEqual([])
  })

  test('is never imported by what runs in it', () => {
    const inApp = [...['app', 'lib/ui', 'lib/station'].flatMap(sourceFilesIn), ...shared, ...marked]
    expect(inApp.filter((file) => importsOf(file).some(runsOutside))).toEqual([])
  })
})
