import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { canonicalText } from '@/lib/documents/canonical-text'
import { readCount } from '@/lib/documents/count/read-count'
import { textOfCount } from '@/lib/documents/count/text-of-count.input'
import { hashOfText } from '@/lib/documents/hash-of-text'
import { countFault } from '@/lib/kitchen/shifts/count-fault.input'
import { countPiecesInput } from '@/lib/kitchen/shifts/count-pieces.input'

const none = { sampled: null, sold: null, given: null, wasted: null }

describe('a count of pieces', () => {
  it.each([
    ['made and good alone', { made: 12, good: 11, ...none }, null],
    ['nothing made', { made: 0, good: 0, ...none }, null],
    ['all of them gone', { made: 12, good: 11, sampled: 4, sold: 5, given: 2, wasted: 1 }, null],
    ['some of it unsaid', { made: 12, good: 11, sold: 12 }, null],
    ['more good ones than were made', { made: 4, good: 5, ...none }, { at: 'good', code: 'more-than-made' }],
    ['more sold than were made', { made: 4, good: 4, sold: 5 }, { at: 'wasted', code: 'more-gone' }],
    [
      'one too many in all',
      { made: 12, good: 12, sampled: 4, sold: 5, given: 2, wasted: 2 },
      { at: 'wasted', code: 'more-gone' },
    ],
  ])('can be or not: %s', (_, count, fault) => {
    expect(countFault(count)).toEqual(fault)
  })

  it('adds up or is refused, at the desk as on a tablet', () => {
    const pieces = fc.integer({ min: 0, max: 20 })
    const said = fc.option(pieces)
    fc.assert(
      fc.property(
        fc.record({ made: pieces, good: pieces, sampled: said, sold: said, given: said, wasted: said }),
        ({ made, good, ...became }) => {
          const gone = Object.values(became).reduce<number>((sum, each) => sum + (each ?? 0), 0)
          const isPossible = good <= made && gone <= made
          expect(countFault({ made, good, ...became }) === null).toBe(isPossible)
          const batchId = '019a0000-0000-7000-8000-000000000022'
          const typed = { batchId, seenRevision: 1, piecesMade: made, piecesGood: good, ...became }
          expect(countPiecesInput.safeParse(typed).success).toBe(isPossible)
        },
      ),
      { seed: 85 },
    )
  })

  it('has a text that is canonical, is read back as what was entered, and gives its text again', () => {
    const said = fc.option(fc.nat(10_000))
    const content = fc.record({
      batch: fc.uuid(),
      clockAheadS: fc.option(fc.integer()),
      given: said,
      good: fc.nat(10_000),
      made: fc.nat(10_000),
      sampled: said,
      sold: said,
      takenAt: fc.constant('2026-03-01T05:20:00.000+01:00'),
      wasted: said,
    })
    fc.assert(
      fc.property(content, (entered) => {
        const written = textOfCount(entered)
        expect(canonicalText(JSON.parse(written))).toBe(written)
        const read = readCount(written, hashOfText(written))
        expect(read.outcome).toBe('read')
        if (read.outcome === 'read') expect(textOfCount(read.value)).toBe(written)
      }),
      { seed: 86 },
    )
  })
})
