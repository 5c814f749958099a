import { describe, expect, test } from 'vitest'
import { catalogue, findEntry } from '@/lib/calc/catalogue'
import type { CalcEntry } from '@/lib/calc/entry'
import { isThere } from '@/tests/support/source-files'

const entries: readonly CalcEntry[] = catalogue

test('no id is there twice', () => {
  expect(new Set(entries.map(({ id }) => id)).size).toBe(entries.length)
})

describe.each(entries)('$id', (entry) => {
  test('is named for its file', () => {
    expect(isThere(`lib/calc/${entry.id}.ts`)).toBe(true)
  })

  test('its worked example runs, and question and answer are of their stated shapes', () => {
    const answer = entry.run(entry.input.parse(entry.example))
    expect(entry.output.parse(answer)).toEqual(answer)
  })

  test('says where it is from', () => {
    expect(entry.source.length).toBeGreaterThan(10)
  })
})

test('an entry is found by its id, and an unknown one is not', () => {
  expect(findEntry('weighing/least-net-mass')?.id).toBe('weighing/least-net-mass')
  expect(findEntry('weighing/least-net-mass/')).toBeUndefined()
  expect(findEntry('constructor')).toBeUndefined()
})
