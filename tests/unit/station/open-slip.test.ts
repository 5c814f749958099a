import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readSlip } from '@/lib/station/talk/open-slip'

const batchId = '0198f6a2-2b7c-7d10-8a11-5b1f2c3d4e5f'

describe('what stands behind a scanned address', () => {
  it('names a dough and one of its pieces', () => {
    expect(readSlip(`#${batchId}.3`)).toEqual({ batchId, piece: 3 })
  })

  it.each([
    '',
    '#',
    `#${batchId}`,
    `#${batchId}.0`,
    `#${batchId}.-1`,
    `#${batchId}.1.2`,
    `#${batchId}.99999`,
    `${batchId}.1`,
    '#main',
  ])('%j names none', (hash) => {
    expect(readSlip(hash)).toBeNull()
  })

  it('whatever it is, is read without an error', () => {
    fc.assert(
      fc.property(fc.string(), (hash) => {
        const slip = readSlip(hash)
        expect(slip === null || `#${slip.batchId}.${slip.piece}` === hash).toBe(true)
      }),
    )
    fc.assert(
      fc.property(fc.uuid(), fc.integer({ min: 1, max: 9999 }), (id, piece) => {
        expect(readSlip(`#${id}.${piece}`)).toEqual({ batchId: id, piece })
      }),
    )
  })
})
