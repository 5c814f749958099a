import { expect, test } from 'vitest'
import { isKeptField } from '@/lib/ui/typed-in'
import { sourceFilesIn, textOf } from '../../support/source-files'

test('no field that hides what is typed in it is kept as a draft or given back after a refusal', () => {
  const names = sourceFilesIn('app').flatMap((file) =>
    [...textOf(file).matchAll(/<\w+[^<>]*?type="password"[^<>]*?\/?>/g)].map(
      ([field]) => /name="([^"]+)"/.exec(field)?.[1] ?? `a field without a name in ${file}`,
    ),
  )
  expect(names.length).toBeGreaterThan(5)
  expect(names.filter(isKeptField)).toEqual([])
})
