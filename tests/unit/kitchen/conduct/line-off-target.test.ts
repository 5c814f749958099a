import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { lineOffTarget } from '@/lib/kitchen/conduct/line-off-target.input'
import { toleranceOfLine } from '@/lib/kitchen/conduct/tolerance-of-line.input'

const found = (massG: number, targetG: number, toleranceG: number | null) =>
  lineOffTarget({ how: 'weighed', massG, targetG, toleranceG })

describe('the tolerance of a line', () => {
  it('is 5 % of a dose and 1 % of anything else', () => {
    expect(toleranceOfLine({ targetG: 60, stepG: 0.1, apartG: 60 })).toBe(3)
    expect(toleranceOfLine({ targetG: 600, stepG: 1, apartG: null })).toBe(6)
  })

  it('is never less than one step of the scale', () => {
    expect(toleranceOfLine({ targetG: 6, stepG: 1, apartG: 6 })).toBe(1)
    expect(toleranceOfLine({ targetG: 18, stepG: 0.5, apartG: null })).toBe(0.5)
    expect(toleranceOfLine({ targetG: 0, stepG: 0.1, apartG: 12 })).toBe(0.1)
  })

  it('of a dose that stands within a larger line is of the dose', () => {
    expect(toleranceOfLine({ targetG: 212, stepG: 0.1, apartG: 12 })).toBeCloseTo(0.6, 12)
  })

  it('lets no mass be on target for two kinds of dough that the scale can tell apart', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 5000, noNaN: true }),
        fc.double({ min: 1, max: 500, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (controlG, moreG, share) => {
          const stepG = moreG / 10
          const doughs = [controlG, controlG + moreG].map((targetG) => ({
            targetG,
            toleranceG: toleranceOfLine({ targetG, stepG, apartG: moreG }),
          }))
          const massG = controlG + share * moreG
          const on = doughs.filter((dough) => found(massG, dough.targetG, dough.toleranceG) === 'on-target')
          expect(on.length).toBeLessThan(2)
        },
      ),
    )
  })
})

describe('a line', () => {
  it('is on target up to the tolerance, and off from the first step beyond', () => {
    expect(found(63, 60, 3)).toBe('on-target')
    expect(found(57, 60, 3)).toBe('on-target')
    expect(found(63.1, 60, 3)).toBe('off')
    expect(found(56.9, 60, 3)).toBe('off')
    // 0.1 and 0.2 are a little more than 0.3 to a computer.
    expect(found(0.1 + 0.2, 0.2, 0.1)).toBe('on-target')
  })

  it('that was ticked is as planned, and one of which nothing went in is left out where some should have', () => {
    expect(lineOffTarget({ how: 'ticked', massG: null, targetG: 60, toleranceG: 3 })).toBe('on-target')
    expect(lineOffTarget({ how: 'left_out', massG: null, targetG: 60, toleranceG: 3 })).toBe('left-out')
    expect(found(0, 60, 3)).toBe('left-out')
    expect(lineOffTarget({ how: 'left_out', massG: null, targetG: 0, toleranceG: 0.1 })).toBe('on-target')
    expect(found(0.1, 0, 0.1)).toBe('on-target')
    expect(found(0.2, 0, 0.1)).toBe('off')
  })

  it('that takes as much as it takes is off by nothing, and can still be left out', () => {
    expect(found(700, 600, null)).toBe('on-target')
    expect(found(0, 600, null)).toBe('left-out')
  })

  it('that is off stays off, the further it is from its target', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 5000, noNaN: true }),
        fc.double({ min: 0.001, max: 100, noNaN: true }),
        fc.double({ min: 0, max: 1000, noNaN: true }),
        fc.double({ min: 0, max: 1000, noNaN: true }),
        (targetG, toleranceG, byG, furtherG) => {
          const near = found(targetG + byG, targetG, toleranceG)
          if (near === 'off') expect(found(targetG + byG + furtherG, targetG, toleranceG)).toBe('off')
        },
      ),
    )
  })
})
