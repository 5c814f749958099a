import { expect, test } from 'vitest'
import { sourceFilesIn, textOf } from '../../support/source-files'

const files = ['app', 'lib', 'seed'].flatMap(sourceFilesIn)

test('no folder has an index that hands on its files: a page loads only what it names', () => {
  expect(files.filter((file) => /\/index\.tsx?$/.test(file))).toEqual([])
})

test('no file hands on everything of another', () => {
  expect(files.filter((file) => /^export \*/m.test(textOf(file)))).toEqual([])
})

test('files are named in lower case with hyphens', () => {
  const odd = files.filter(
    (file) =>
      !/^[a-z0-9.-]+\.(ts|tsx)$/.test(file.split('/').at(-1) ?? '') || (file.startsWith('lib/') && /[A-Z]/.test(file)),
  )
  expect(odd).toEqual([])
})
