import { describe, expect, it } from 'vitest'
import type { FloorDough, FloorMeasure, FloorPlace } from '@/lib/station/keep/facts'
import { placeOfSlip } from '@/lib/station/outbox/place-of-slip'

const reading = { id: 'r', value: '412', unit: 'g', inBase: 412, at: '', receivedAt: '', who: 'Esi', personId: 'esi' }
const at = (piece: number | null, repeat: number, isRead = false): FloorPlace => ({
  piece,
  factorLevel: null,
  repeat,
  reading: isRead ? reading : null,
})
const measure = (id: string, places: FloorPlace[]): FloorMeasure => ({
  id,
  code: null,
  name: id,
  unit: 'g',
  digits: 0,
  least: 0,
  most: 1000,
  level: 'piece',
  isWanted: true,
  repeats: 2,
  repeatLimit: 1000,
  toBase: { times: 1, plus: 0 },
  ageLeastH: null,
  ageMostH: null,
  byDisplacement: false,
  places,
})
const dough = {
  id: 'dough',
  measures: [
    measure('weight', [at(1, 1, true), at(2, 1)]),
    measure('volume', [at(1, 1, true), at(1, 2), at(2, 1)]),
    measure('temperature', [at(null, 1)]),
  ],
} as Partial<FloorDough> as FloorDough

describe('where a slip leads', () => {
  it('is its piece, and while a measure is read the next number of that measure there', () => {
    expect(placeOfSlip(dough, 2, null, [])).toEqual({ piece: 2 })
    expect(placeOfSlip(dough, 2, 'weight', [])).toEqual({ measureId: 'weight', piece: 2, repeat: 1 })
    expect(placeOfSlip(dough, 1, 'volume', [])).toEqual({ measureId: 'volume', piece: 1, repeat: 2 })
  })

  it('is the piece where that measure has been read there, is not read of it, or is none of the dough’s', () => {
    expect(placeOfSlip(dough, 1, 'weight', [])).toEqual({ piece: 1 })
    expect(placeOfSlip(dough, 9, 'weight', [])).toEqual({ piece: 9 })
    expect(placeOfSlip(dough, 2, 'ash', [])).toEqual({ piece: 2 })
  })

  it('is the dough where no piece is named, whatever is read of all of it', () => {
    expect(placeOfSlip(dough, null, 'temperature', [])).toEqual({ piece: null })
  })
})
