import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { articleOf, codeAsKept, faultOfCode, lotOfOther } from '@/lib/kitchen/stores/code-on-label.input'
import { lotCode } from '@/lib/kitchen/stores/lot-code.input'

describe('the code on a label', () => {
  it('is taken by a tablet exactly where the book takes it, and is the same there', () => {
    const text = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 70 }),
      fc.string({ unit: 'grapheme', maxLength: 70 }),
      fc.stringMatching(/^[ \t]{0,2}[A-Za-z0-9 ./-]{0,64}[ \n]{0,2}$/),
      fc.constantFrom('\u200b', 'F\u001d1', 'F-\u202e1', 'x'.repeat(61), 'x'.repeat(60), 'Su\u0308d', '\ud800'),
    )
    fc.assert(
      fc.property(text, (typed) => {
        const read = lotCode.safeParse(typed)
        expect(faultOfCode(typed) === null).toBe(read.success)
        if (read.success) expect(codeAsKept(typed)).toBe(read.data)
      }),
      { seed: 7, numRuns: 1000 },
    )
    expect(faultOfCode('x'.repeat(61))).toBe('too-long')
    expect([faultOfCode('F\u001d1'), faultOfCode('\ud800'), faultOfCode(' ')]).toEqual(Array(3).fill('unreadable'))
  })

  it('names an article first, in brackets or behind the sign of its kind of code, or none', () => {
    for (const code of [
      '0104012345678905' + '10A',
      '(01)04012345678905(10)A',
      ']C1010401234567890510A',
      ' (01)04012345678905',
    ])
      expect(articleOf(code), code).toBe('04012345678905')
    for (const code of ['4012345678905', '010401234567', 'L-1', '1004012345678905', ''])
      expect(articleOf(code)).toBeNull()
  })

  it('is another ingredient’s where that one has it or its article, and this one has neither', () => {
    const salt = { ingredientId: 'salt', code: 'S-1' }
    const malt = { ingredientId: 'malt', code: '(01)04012345678905(10)A' }
    const other = (typed: string, of = 'flour', lots = [salt, malt]) => lotOfOther(typed, of, lots)
    expect(other(' s-1')).toBe(salt)
    expect(other('0104012345678905' + '10B')).toBe(malt)
    expect(other('0104012345678905' + '10B', 'malt')).toBeNull()
    expect(
      other('0104012345678905' + '10B', 'flour', [malt, { ...malt, ingredientId: 'flour', code: malt.code + 'x' }]),
    ).toBeNull()
    expect(other('F-1')).toBeNull()
    expect(other('S-1', 'salt')).toBeNull()
  })
})
