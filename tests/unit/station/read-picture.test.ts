import fs from 'node:fs'
import { createRequire } from 'node:module'
import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { qrCode } from '@/lib/kitchen/stations/qr-code'
import { prepareReader, readPicture } from '@/lib/station/scan/read-picture'
import { code128, onPaper, toImageData, type Grey } from '@/tests/support/drawn-codes'

beforeAll(async () => {
  const program = createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm')
  await prepareReader({ wasmBinary: Uint8Array.from(fs.readFileSync(program)).buffer })
})

const read = (picture: Grey) => readPicture(toImageData(picture))
const slip = 'https://bench.mill-row.example/station#0198f6a2-2b7c-7d10-8a11-5b1f2c3d4e5f.12'

/** A quarter turn. */
function turned({ width, height, data }: Grey): Grey {
  return {
    width: height,
    height: width,
    data: data.map((_, at) => data[(at % height) * width + Math.floor(at / height)] ?? 0),
  }
}

/** Soft as a camera that has not focused, grey as in bad light, with grain. */
function badly({ width, height, data }: Grey): Grey {
  const at = (x: number, y: number) =>
    data[Math.min(height - 1, Math.max(0, y)) * width + Math.min(width - 1, Math.max(0, x))] ?? 0
  const around = [-1, 0, 1]
  return {
    width,
    height,
    data: data.map((_, index) => {
      const [x, y] = [index % width, Math.floor(index / width)]
      const sum = around.flatMap((dy) => around.map((dx) => at(x + dx, y + dy))).reduce((a, b) => a + b, 0)
      return 60 + (sum / 9) * 0.4 + ((index * 7919) % 13)
    }),
  }
}

describe('the reader that comes with the page', () => {
  it('reads a slip’s code as it is printed, whichever way up, soft and in bad light', async () => {
    const picture = onPaper([qrCode(slip)], 5, { width: 640, height: 480 })
    expect(await read(picture)).toEqual([slip])
    expect(await read(turned(picture))).toEqual([slip])
    expect(await read(turned(turned(picture)))).toEqual([slip])
    expect(await read(badly(picture))).toEqual([slip])
  })

  it('reads a lot’s label in Code 128, whichever way up, soft and in bad light', async () => {
    const picture = onPaper([code128('F-2026/118')], 3, { width: 640, height: 480 })
    expect(await read(picture)).toEqual(['F-2026/118'])
    expect(await read(turned(picture))).toEqual(['F-2026/118'])
    expect(await read(turned(turned(picture)))).toEqual(['F-2026/118'])
    expect(await read(badly(picture))).toEqual(['F-2026/118'])
  })

  it('reads all that are in one picture, and nothing where there is none', async () => {
    const two = onPaper([qrCode(slip), code128('F-1')], 3)
    expect((await read(two)).sort()).toEqual(['F-1', slip].sort())
    expect(await read(onPaper([], 1, { width: 640, height: 480 }))).toEqual([])
    const grain = Uint8Array.from({ length: 320 * 240 }, (_, at) => (at * 7919 * (at % 31)) % 256)
    expect(await read({ width: 320, height: 240, data: grain })).toEqual([])
  })

  it('reads every text of either kind as it was written', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.string({
          unit: fc.integer({ min: 33, max: 126 }).map((sign) => String.fromCharCode(sign)),
          minLength: 1,
          maxLength: 24,
        }),
        async (text) => {
          expect(await read(onPaper([code128(text)], 2))).toEqual([text])
          expect(await read(onPaper([qrCode(text)], 3))).toEqual([text])
        },
      ),
      { numRuns: 40 },
    )
  })

  it('reads nothing where a bar of the label was changed: the check sign does not fit', async () => {
    const [row = []] = code128('F-2026')
    // The third sign, mirrored, is another sign's or none.
    const spoiled = [
      ...row.slice(0, 33),
      ...row
        .slice(33, 44)
        .reverse()
        .map((is) => !is),
      ...row.slice(44),
    ]
    expect(await read(onPaper([Array.from({ length: 24 }, () => spoiled)], 3))).toEqual([])
  })
})
