import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { isSlip, shownText, whatCodeSays, whatCodesSay } from '@/lib/station/scan/what-code-says'

const origin = 'https://bench.mill-row.example:8443'
const doughs = [
  { id: '0198f6a2-2b7c-7d10-8a11-5b1f2c3d4e5f', code: '307' },
  { id: '0198f6a2-2b7c-7d10-8a11-5b1f2c3d4e60', code: '412' },
  { id: '0198f6a2-2b7c-7d10-8a11-5b1f2c3d4e61', code: '412' },
] as const
const [{ id: batchId }] = doughs
const unknown = '0198f6a2-2b7c-7d10-8a11-5b1f2c3d4eff'
const says = (text: string) => whatCodeSays(text, doughs, origin)

describe('what a code says that was scanned or typed', () => {
  it('a slip of a dough that is on the tablet opens its piece, by whatever name the install was reached', () => {
    const piece = { says: 'dough', batchId, piece: 3 }
    expect(says(`${origin}/station#${batchId}.3`)).toEqual(piece)
    expect(says(` HTTPS://BENCH.MILL-ROW.EXAMPLE:8443/STATION#${batchId.toUpperCase()}.3\r\n`)).toEqual(piece)
    expect(says(`https://former.example/station#${batchId}.3`)).toEqual(piece)
  })

  it('one of a dough that is not on it is told, and whether it is of this install', () => {
    expect(says(`${origin}/station#${unknown}.3`)).toEqual({ says: 'not-here' })
    expect(says(`https://elsewhere.example/station#${unknown}.3`)).toEqual({ says: 'elsewhere' })
  })

  it('a badge is told as one, and what stands in it is not shown', () => {
    expect(says(` evendough${'4'.repeat(39)}`)).toEqual({ says: 'badge' })
    expect(whatCodesSay([`EVENDOUGH${'4'.repeat(39)}`, '307'], doughs, origin)).toMatchObject({ says: 'dough' })
  })

  it('a dough’s code opens it, where it is one dough’s', () => {
    expect(says(' 307 ')).toEqual({ says: 'dough', batchId, piece: null })
    expect(says('412')).toEqual({ says: 'same-code', text: '412' })
  })

  it.each([
    '308',
    '3070',
    'F-2026/118',
    `#${batchId}.3`,
    `${origin}/station#${batchId}`,
    `${origin}/station#${batchId}.0`,
    `${origin}/station?#${batchId}.3`,
    `${origin}/shift#${batchId}.3`,
    `javascript:alert(1)//station#${batchId}.3`,
    `x ${origin}/station#${batchId}.3`,
  ])('%j is none of ours', (text) => {
    expect(says(text)).toEqual({ says: 'no-slip', text: shownText(text) })
    expect(isSlip(text)).toBe(false)
  })

  it('of nothing but blanks nothing is said', () => {
    expect(says(' \n')).toEqual({ says: 'empty' })
  })

  it('whatever it is, there is an answer, and only what is on the tablet is ever opened', () => {
    const near = fc
      .tuple(fc.constantFrom(origin, 'http://a', ''), fc.constantFrom('/station#', '/Station#', '#'), fc.string())
      .map((parts) => parts.join(''))
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary' }), near), (text) => {
        const said = says(text)
        if (said.says === 'dough') expect(doughs.map(({ id }) => id)).toContain(said.batchId)
        if ('text' in said) expect(Array.from(said.text).length).toBeLessThanOrEqual(41)
      }),
    )
    fc.assert(
      fc.property(
        fc.uuid(),
        fc.integer({ min: 1, max: 9999 }),
        fc.constantFrom('https://a.example', 'https://10.0.0.7:8443', origin),
        (id, piece, from) => {
          const text = `${from}/station#${id}.${piece}`
          expect(isSlip(text)).toBe(true)
          expect(whatCodeSays(text, [{ id, code: '307' }], origin)).toEqual({ says: 'dough', batchId: id, piece })
          expect(whatCodeSays(text, [], from)).toEqual({ says: 'not-here' })
        },
      ),
    )
  })
})

describe('what the codes of one picture say together', () => {
  const together = (...texts: string[]) => whatCodesSay(texts, doughs, origin)
  it('one that opens something does so, beside others that do not; two are nobody’s guess', () => {
    const slip = `${origin}/station#${batchId}.3`
    expect(together()).toBeNull()
    expect(together('4012345678901', slip)).toEqual({ says: 'dough', batchId, piece: 3 })
    expect(together(slip, slip, slip)).toEqual({ says: 'dough', batchId, piece: 3 })
    expect(together(slip, `${origin}/station#${batchId}.4`)).toEqual({ says: 'several' })
    expect(together('F-1', 'F-2')).toEqual({ says: 'no-slip', text: 'F-1' })
  })
})

describe('a code’s text as it is shown', () => {
  it('is one short line of signs that are seen', () => {
    expect(shownText('\u001dF-1\u0000 \n\u202e x')).toBe('F-1 x')
    expect(shownText('a'.repeat(500))).toBe(`${'a'.repeat(40)}…`)
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(shownText(text)).not.toMatch(/\p{C}|\n/u)
      }),
    )
  })
})
