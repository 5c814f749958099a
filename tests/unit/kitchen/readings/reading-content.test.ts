import canonicalize from 'canonicalize'
import { expect, it } from 'vitest'
import { readingContentText } from '@/lib/kitchen/readings/reading-content.input'

const logged = {
  id: '0195f0c0-0000-7000-8000-000000000001',
  batchId: '0195f0c0-0000-7000-8000-000000000002',
  measureId: '0195f0c0-0000-7000-8000-000000000003',
  repeat: 1,
  value: '412,5',
  unit: '°C',
  takenAt: '2026-03-02T04:00:00.000Z',
}
const correction = {
  id: logged.id,
  supersedesId: logged.batchId,
  repeat: 2,
  piece: 3,
  value: '4',
  unit: 'g',
  reason: 'mis\u2028typed "4"',
}

// RFC 8785, by the reference library.
it.each([logged, { ...logged, piece: 4, factorLevel: 'day 3' }, correction])(
  'is written as canonical JSON',
  (entry) => {
    const text = readingContentText(entry)
    expect(text).toBe(canonicalize(JSON.parse(text)))
  },
)

it('is the same for a field left out and one left empty, and leaves the id out', () => {
  expect(readingContentText({ ...logged, piece: null, factorLevel: null })).toBe(
    readingContentText({ ...logged, id: correction.id }),
  )
})

it('differs in everything that was entered', () => {
  const changes = [
    { batchId: correction.id },
    { measureId: correction.id },
    { piece: 1 },
    { factorLevel: 'x' },
    { repeat: 2 },
    { value: '412.5' },
    { unit: '°F' },
    { takenAt: '2026-03-02T04:00:01.000Z' },
  ]
  const texts = [logged, ...changes.map((change) => ({ ...logged, ...change })), correction].map(readingContentText)
  expect(new Set(texts).size).toBe(texts.length)
})
