import 'server-only'
import Papa from 'papaparse'
import { mostImported, separator, type ImportMatch } from './import-readings.input'

export type ImportRow = {
  /** Of the file, from 1: a cell with line breaks in it takes several. */
  line: number
  cells: string[]
  /** A quotation mark in it is not closed, or not where a cell ends. */
  isBroken: boolean
}

export type ImportTable = { header: string[]; rows: ImportRow[] }
export type FileFault =
  | 'file-empty'
  | 'file-too-large'
  | 'file-not-utf8'
  | 'file-without-rows'
  | 'file-too-many-rows'
  | 'file-too-wide'

/** The text of a file: UTF-8, with or without a byte order mark, its line ends brought to one form. */
export function decodeImport(bytes: Uint8Array): { text: string } | { fault: FileFault } {
  if (bytes.length === 0) return { fault: 'file-empty' }
  if (bytes.length > mostImported.bytes) return { fault: 'file-too-large' }
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes)
    // Plain text in UTF-16 is also lawful UTF-8, with a NUL in each pair of bytes.
    if (text.includes('\u0000')) return { fault: 'file-not-utf8' }
    return text.trim() === '' ? { fault: 'file-empty' } : { text: text.replace(/\r\n?/g, '\n').normalize('NFC') }
  } catch {
    // The decoder's only error: bytes that are not UTF-8.
    return { fault: 'file-not-utf8' }
  }
}

/** By what the cells are parted: what parts the first lines into as many cells each, and most of them. A comma where nothing does. */
export function guessSeparator(text: string): ImportMatch['separator'] {
  const scored = separator.options.map((by) => {
    const [header = [], ...rows] = Papa.parse<string[]>(text, {
      delimiter: by,
      newline: '\n',
      preview: 20,
      skipEmptyLines: true,
    }).data
    return { by, cells: header.length, isEven: rows.every((cells) => cells.length === header.length) }
  })
  const [best] = scored
    .filter(({ cells }) => cells > 1)
    .sort((a, b) => Number(b.isEven) - Number(a.isEven) || b.cells - a.cells)
  return best?.by ?? ','
}

/** The file as a table: its first line that is not empty names the columns; empty lines are left out; cells are trimmed. */
export function readRows(text: string, by: string): ImportTable | { fault: FileFault } {
  const { data, errors } = Papa.parse<string[]>(text, { delimiter: by, newline: '\n' })
  const broken = new Set(errors.flatMap(({ type, row }) => (type === 'Quotes' && row !== undefined ? [row] : [])))
  let line = 1
  const all = data.map((cells, i): ImportRow => {
    const row = { line, cells: cells.map((cell) => cell.trim()), isBroken: broken.has(i) }
    line += 1 + cells.reduce((breaks, cell) => breaks + cell.split('\n').length - 1, 0)
    return row
  })
  const [header, ...rows] = all.filter(({ cells }) => cells.some((cell) => cell !== ''))
  if (!header || rows.length === 0) return { fault: 'file-without-rows' }
  if (header.cells.length > mostImported.columns) return { fault: 'file-too-wide' }
  if (rows.length > mostImported.rows) return { fault: 'file-too-many-rows' }
  return { header: header.cells, rows }
}
