import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { lotOfCodes } from '@/lib/station/scan/lot-of-codes'

const lot = (id: string, code: string) => ({ id, code, isPast: false })
const flour = { ingredientId: 'flour', name: 'Wheat flour', lots: [lot('1', 'F-1'), lot('2', 'F-2')] }
const salt = { ingredientId: 'salt', name: 'Salt', lots: [lot('3', 'S-1')] }
const find = (...texts: string[]) => lotOfCodes(texts, flour, [flour, salt])
const slip = 'https://mill-row.example/station#0198f6a2-2b7c-7d10-8a11-5b1f2c3d4e5f.3'

describe('the lot of the codes on a label', () => {
  it('is the one of the line, beside whatever else stands there', () => {
    expect(find('f-1 ')).toEqual({ found: 'lot', lot: flour.lots[0], code: 'f-1' })
    expect(find('4012345678901', 'F-2', 'S-1', slip)).toEqual({ found: 'lot', lot: flour.lots[1], code: 'F-2' })
    expect(find('F-1', 'f-1')).toMatchObject({ found: 'lot', lot: flour.lots[0] })
  })

  it('is neither of two', () => {
    expect(find('F-1', 'F-2')).toEqual({ found: 'several' })
  })

  it('is none of another ingredient, none that is unknown or ended, and no slip', () => {
    expect(find('X', 'S-1')).toEqual({ found: 'other', name: 'Salt', code: 'S-1' })
    expect(find('F-0')).toEqual({ found: 'none', code: 'F-0' })
    expect(find(slip)).toEqual({ found: 'slip' })
    expect(find(`EVENDOUGH${'4'.repeat(39)}`)).toEqual({ found: 'badge' })
    expect(find()).toBeNull()
  })

  it('whatever the codes say, only a lot of the line is ever chosen', () => {
    const text = fc.oneof(fc.string({ unit: 'binary' }), fc.constantFrom('F-1', 'f-2', 'S-1', slip))
    fc.assert(
      fc.property(fc.array(text, { maxLength: 5 }), (texts) => {
        const found = find(...texts)
        if (found?.found === 'lot') expect(flour.lots).toContainEqual(found.lot)
        else if (found?.found !== 'several') expect(texts.some((each) => /^f-[12]$/i.test(each.trim()))).toBe(false)
      }),
    )
  })
})
