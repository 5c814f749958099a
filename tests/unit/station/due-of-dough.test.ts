import { expect, it } from 'vitest'
import type { FloorMeasure } from '@/lib/station/keep/facts'
import { dueOfDough } from '@/lib/station/outbox/due-of-dough'

const hour = 60 * 60_000
const baked = Date.parse('2026-03-02T05:00:00Z')
const measure = (name: string, age: [number, number | null] | null, isRead = false): FloorMeasure => ({
  id: name,
  code: null,
  name,
  unit: 'g',
  digits: 0,
  least: 0,
  most: 1000,
  level: 'batch',
  byDisplacement: false,
  isWanted: true,
  repeats: 1,
  repeatLimit: null,
  toBase: { times: 1, plus: 0 },
  ageLeastH: age?.[0] ?? null,
  ageMostH: age?.[1] ?? null,
  places: [
    {
      piece: null,
      factorLevel: null,
      repeat: 1,
      reading: isRead
        ? {
            id: 'read',
            value: '412',
            unit: 'g',
            inBase: 412,
            at: '2026-03-02T07:00:00Z',
            receivedAt: '2026-03-02T07:00:00Z',
            who: 'Esi',
            personId: 'esi',
          }
        : null,
    },
  ],
})
const dough = (measures: FloorMeasure[], bakedAt: string | null = new Date(baked).toISOString()) => ({
  id: 'dough',
  bakedAt,
  measures,
})

it('says what is late first, then what is due, then what comes, without a network as with one', () => {
  const measures = [
    measure('firmness', [68, 76]),
    measure('next morning', [18, 26]),
    measure('cooled', [1, 3]),
    measure('volume', [2, null]),
    measure('water', null),
  ]
  const at = (hours: number) =>
    dueOfDough(dough(measures), [], baked + hours * hour).map(({ measure: name, due }) => `${name} ${due.when}`)
  expect(at(0)).toEqual(['cooled later', 'volume later', 'next morning later', 'firmness later'])
  expect(at(2.5)).toEqual(['cooled now', 'volume now', 'next morning later', 'firmness later'])
  expect(at(20)).toEqual(['cooled late', 'next morning now', 'volume now', 'firmness later'])
})

it('says nothing of what is read, of what nobody asks for, and of a dough that is still in the oven', () => {
  const now = baked + 2 * hour
  expect(dueOfDough(dough([measure('cooled', [1, 3], true)]), [], now)).toEqual([])
  expect(dueOfDough(dough([{ ...measure('cooled', [1, 3]), isWanted: false }]), [], now)).toEqual([])
  expect(dueOfDough(dough([measure('cooled', [1, 3])], null), [], now)).toEqual([])
})
