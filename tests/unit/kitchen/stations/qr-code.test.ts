import { expect, it } from 'vitest'
import { qrCode } from '@/lib/kitchen/stations/qr-code'
import { terminalCode } from '@/lib/ops/lan/terminal-code'

const address = 'https://kitchen.local:3443'
const finder = ['1111111', '1000001', '1011101', '1011101', '1011101', '1000001', '1111111']

/** The squares at a corner, 7 by 7. */
const corner = (rows: readonly (readonly boolean[])[], top: number, left: number) =>
  rows.slice(top, top + 7).map((row) =>
    row
      .slice(left, left + 7)
      .map(Number)
      .join(''),
  )

// The patterns of ISO/IEC 18004 are told from memory; that a camera reads the whole was tried with a scanner's program.
it('has the size of a QR code and its three finders, and a timing line between them', () => {
  const rows = qrCode(address)
  const last = rows.length - 7
  expect((rows.length - 17) % 4).toBe(0)
  expect(rows.every((row) => row.length === rows.length)).toBe(true)
  for (const [top, left] of [
    [0, 0],
    [0, last],
    [last, 0],
  ] as const)
    expect(corner(rows, top, left)).toEqual(finder)
  expect(rows[6]?.slice(8, -8)).toEqual(rows[6]?.slice(8, -8).map((_, at) => at % 2 === 0))
})

it('is another one for another address, and the same for the same', () => {
  expect(qrCode(address)).toEqual(qrCode(address))
  expect(qrCode('https://kitchen.local:3444')).not.toEqual(qrCode(address))
})

it('stands in a terminal square by square, two rows a line, with a light edge', () => {
  const rows = qrCode(address)
  const lines = terminalCode(rows)
    .replaceAll(/\u001b\[\d+m/g, '')
    .split('\n')
  const size = rows.length + 4
  expect(lines).toHaveLength(Math.ceil(size / 2))
  const read = lines.flatMap((line) => [
    Array.from(line, (sign) => sign === '█' || sign === '▀'),
    Array.from(line, (sign) => sign === '█' || sign === '▄'),
  ])
  expect(read.slice(2, 2 + rows.length).map((row) => row.slice(2, -2))).toEqual(rows)
  expect(read.slice(0, 2).flat().some(Boolean)).toBe(false)
})
