import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { LineStanding } from '@/lib/station/outbox/stand-of-line'
import { canChangeWater, waterAfter, waterInDough } from '@/lib/station/outbox/water-in-dough'

const target = { massG: 721.3, stepG: 1, toleranceG: 7.2 }
const stands = (more: Partial<LineStanding>): LineStanding => ({
  id: 'id',
  who: 'Esi',
  personId: 'esi',
  at: '2026-03-02T04:00:00.000Z',
  how: 'weighed',
  massG: 700,
  lots: [],
  state: 'book',
  ...more,
})
const lot = (code: string) => ({ id: code, code, isPast: false, massG: null })
/** Whole tenths of a gram, as a scale shows them. */
const tenths = (least: number) => fc.integer({ min: least, max: 50_000 })
const typed = (of: number) => `${Math.floor(of / 10)}.${of % 10}`

describe('the water in a dough', () => {
  it('is what was weighed; as planned where it was ticked; nothing where it was left out', () => {
    expect(waterInDough({ target, stands: stands({}) }, 'g')).toBe('700')
    expect(waterInDough({ target, stands: stands({ how: 'ticked', massG: null }) }, 'g')).toBe('721.3')
    expect(waterInDough({ target, stands: stands({ how: 'left_out', massG: null }) }, 'g')).toBe('0')
    // An avoirdupois ounce is 28.349523125 g exactly: NIST Handbook 44, Appendix C (from memory).
    expect(waterInDough({ target, stands: stands({ massG: 24 * 28.349523125 }) }, 'oz')).toBe('24')
  })

  it('is less by what is held back and more by what is added, exact in the decimals of a scale', () => {
    fc.assert(
      fc.property(tenths(1), tenths(1), (inDough, by) => {
        const of = { inDough: typed(inDough), by: typed(by), planned: typed(50_000) }
        expect(waterAfter({ change: 'added', ...of })).toEqual({ outcome: 'mass', mass: typed(inDough + by) })
        expect(waterAfter({ change: 'heldBack', ...of })).toEqual(
          by < inDough ? { outcome: 'mass', mass: typed(inDough - by) } : { outcome: 'all-held' },
        )
      }),
    )
  })

  it('is as before once what was held back has gone in after all', () => {
    fc.assert(
      fc.property(tenths(2), tenths(1), (inDough, by) => {
        fc.pre(by < inDough)
        const of = { by: typed(by), planned: typed(inDough) }
        const after = waterAfter({ change: 'heldBack', inDough: typed(inDough), ...of })
        expect(after.outcome === 'mass' && waterAfter({ change: 'added', inDough: after.mass, ...of })).toEqual({
          outcome: 'mass',
          mass: typed(inDough),
        })
      }),
    )
  })

  it('changes by nothing at no number, and by no more than the plan has of it on top', () => {
    const of = { inDough: '700', planned: '721.3' }
    expect(waterAfter({ change: 'heldBack', by: '0', ...of })).toEqual({ outcome: 'none-typed' })
    expect(waterAfter({ change: 'added', by: '0.0', ...of })).toEqual({ outcome: 'none-typed' })
    expect(waterAfter({ change: 'added', by: '721.3', ...of })).toEqual({ outcome: 'mass', mass: '1421.3' })
    expect(waterAfter({ change: 'added', by: '721.4', ...of })).toEqual({ outcome: 'too-much' })
    expect(waterAfter({ change: 'added', by: '20', ...of, inDough: '0' })).toEqual({ outcome: 'mass', mass: '20' })
  })

  it('changes once it was written, of one lot at most, and of no other line', () => {
    expect(canChangeWater({ isWater: true, stands: stands({ lots: [lot('a')] }) })).toBe(true)
    expect(canChangeWater({ isWater: true, stands: stands({ lots: [lot('a'), lot('b')] }) })).toBe(false)
    expect(canChangeWater({ isWater: true, stands: null })).toBe(false)
    expect(canChangeWater({ isWater: false, stands: stands({}) })).toBe(false)
    // As a tablet keeps a list from before the book said which line is water.
    expect(canChangeWater({ stands: stands({}) })).toBe(false)
  })
})
