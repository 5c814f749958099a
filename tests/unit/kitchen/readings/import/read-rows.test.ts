import fc from 'fast-check'
import Papa from 'papaparse'
import { describe, expect, it } from 'vitest'
import { decodeImport, guessSeparator, readRows } from '@/lib/kitchen/readings/import/read-rows'

const bytes = (text: string) => new TextEncoder().encode(text)
const rowsOf = (text: string, by = ',') => {
  const decoded = decodeImport(bytes(text))
  if ('fault' in decoded) throw new Error(decoded.fault)
  const table = readRows(decoded.text, by)
  if ('fault' in table) throw new Error(table.fault)
  return table
}

describe('the bytes of a file', () => {
  it('may begin with a byte order mark and end lines in any way', () => {
    const unix = rowsOf('code,g\n101,4\n102,5')
    expect(rowsOf('\uFEFFcode,g\r\n101,4\r\n102,5\r\n')).toEqual(unix)
    expect(rowsOf('code,g\r101,4\r102,5')).toEqual(unix)
  })

  it.each<[string, Uint8Array]>([
    ['file-empty', new Uint8Array()],
    ['file-empty', bytes(' \n\n')],
    ['file-too-large', new Uint8Array(1_048_577).fill(0x41)],
    // 'Gär' in ISO 8859-1.
    ['file-not-utf8', Uint8Array.from([0x47, 0xe4, 0x72])],
    // UTF-16 with a mark, and without one.
    ['file-not-utf8', Uint8Array.from([0xff, 0xfe, 0x41, 0x00])],
    ['file-not-utf8', Uint8Array.from([0x41, 0x00, 0x2c, 0x00])],
  ])('are refused with %s', (fault, given) => {
    expect(decodeImport(given)).toEqual({ fault })
  })
})

describe('the rows of a file', () => {
  it('keep their lines over empty lines and line breaks in a cell, and lose blanks around cells', () => {
    const { header, rows } = rowsOf('\n code , note \n101, x\n\n,\n102,"a\nb"\n103,c\n')
    expect(header).toEqual(['code', 'note'])
    expect(rows).toEqual([
      { line: 3, cells: ['101', 'x'], isBroken: false },
      { line: 6, cells: ['102', 'a\nb'], isBroken: false },
      { line: 8, cells: ['103', 'c'], isBroken: false },
    ])
  })

  it('may hold the separator and doubled quotation marks in quotes', () => {
    expect(rowsOf('a,b\n"1,5","say ""x"""').rows[0]!.cells).toEqual(['1,5', 'say "x"'])
  })

  it('name a quotation mark that is not closed at its line', () => {
    expect(rowsOf('a,b\n1,2\n"3,4\n5,6').rows.map(({ line, isBroken }) => [line, isBroken])).toEqual([
      [2, false],
      [3, true],
    ])
  })

  it('are parted by what the first lines say', () => {
    expect(guessSeparator('a;b\n1,5;2\n')).toBe(';')
    expect(guessSeparator('Loaf weight, g;Volume, mL\n400,5;1600\n')).toBe(';')
    expect(guessSeparator('a\tb\n1\t2\n')).toBe('\t')
    expect(guessSeparator('a|b\n1|2\n')).toBe('|')
    expect(guessSeparator('a\n1\n')).toBe(',')
  })

  it.each<[string, string]>([
    ['file-without-rows', 'code,g\n'],
    ['file-too-wide', `${Array.from({ length: 61 }, (_, i) => i).join()}\n1`],
    ['file-too-many-rows', `a\n${'1\n'.repeat(5001)}`],
  ])('are refused with %s', (fault, text) => {
    expect(readRows(text, ',')).toEqual({ fault })
  })

  it('come back from any cells that were written by the library’s own writer', () => {
    const cell = fc.string({ unit: 'grapheme' }).map((text) =>
      text
        .replace(/[\0\r]/g, '')
        .normalize('NFC')
        .trim(),
    )
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell, cell), { minLength: 1, maxLength: 20 }), (written) => {
        const kept = written.filter((cells) => cells.some((each) => each !== ''))
        fc.pre(kept.length > 0)
        const { rows } = rowsOf(Papa.unparse([['h', 'i', 'j'], ...written], { newline: '\n', quotes: true }))
        expect(rows.map(({ cells }) => cells)).toEqual(kept)
        expect(rows.some(({ isBroken }) => isBroken)).toBe(false)
      }),
      { seed: 7, numRuns: 200 },
    )
  })
})
