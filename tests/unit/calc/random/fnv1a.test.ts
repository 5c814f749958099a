import { expect, test } from 'vitest'
import { fnv1a } from '@/lib/calc/random/fnv1a'

test('an empty text hashes to the offset basis', () => {
  expect(fnv1a('')).toBe(0xcbf29ce484222325n)
})

test('texts beyond ASCII are hashed by their UTF-8 bytes', () => {
  expect(fnv1a('ä')).not.toBe(fnv1a('a'))
})
