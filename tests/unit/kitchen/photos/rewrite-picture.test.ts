import fc from 'fast-check'
import sharp from 'sharp'
import { describe, expect, it, vi } from 'vitest'
import { lookAtHeader } from '@/lib/kitchen/photos/look-at-header'
import { rewritePicture, type Picture } from '@/lib/kitchen/photos/rewrite-picture'
import { fromCamera, halves, movingWebp, noise, pngThatSays } from '@/tests/support/made-pictures'

async function written(sent: Uint8Array): Promise<Picture> {
  const picture = await rewritePicture(sent)
  if (typeof picture === 'string') throw new Error(`refused: ${picture}`)
  return picture
}

/** The colour in the middle of a quarter: red, green and blue. */
async function colourAt(bytes: Uint8Array, x: number, y: number): Promise<number[]> {
  const { data, info } = await sharp(bytes).raw().toBuffer({ resolveWithObject: true })
  const at = (y * info.width + x) * info.channels
  return [...data.subarray(at, at + 3)]
}

describe('what is kept of a picture', () => {
  it('has nothing that came with it: no place, no device', async () => {
    const sent = await fromCamera()
    const before = await sharp(sent).metadata()
    expect(before.exif?.toString('latin1')).toContain('Planted camera')
    const { bytes, small } = await written(sent)
    for (const kept of [bytes, small]) {
      const { exif, icc, xmp, iptc, format } = await sharp(kept).metadata()
      expect({ exif, icc, xmp, iptc, format }).toEqual({ format: 'jpeg' })
      expect(Buffer.from(kept).toString('latin1')).not.toMatch(/Planted|Exif/)
    }
  })

  it('is upright, whichever way the camera was held', async () => {
    const { bytes, width, height } = await written(await fromCamera(60, 40, 6))
    expect([width, height]).toEqual([40, 60])
    const { orientation, width: w, height: h } = await sharp(bytes).metadata()
    expect([orientation, w, h]).toEqual([undefined, 40, 60])
    // Turned by a quarter to the right, what was on the left is on top.
    const [red, , blue] = await colourAt(bytes, 20, 10)
    expect([red! > 200, blue! < 60]).toEqual([true, true])
    expect((await colourAt(bytes, 20, 50))[2]).toBeGreaterThan(200)
  })

  it.each(['jpeg', 'png', 'webp'] as const)('comes of a %s, and is a JPEG with its pixels', async (format) => {
    const { bytes, width, height } = await written(await halves(40, 30).toFormat(format).toBuffer())
    expect([width, height]).toEqual([40, 30])
    expect(lookAtHeader(bytes)).toEqual({ kind: 'jpeg', width: 40, height: 30 })
  })

  it('comes of a lossless WebP, and of one with something to see through, on white', async () => {
    expect(await written(await halves(40, 30).webp({ lossless: true }).toBuffer())).toMatchObject({ width: 40 })
    const clear = sharp({ create: { width: 8, height: 8, channels: 4, background: { r: 0, g: 0, b: 0, alpha: 0 } } })
    const { bytes } = await written(await clear.webp().toBuffer())
    expect(await colourAt(bytes, 4, 4)).toEqual([255, 255, 255])
  })

  it('has nothing of what hangs behind the picture’s end', async () => {
    const sent = Buffer.concat([await fromCamera(), Buffer.from('<script>planted()</script>PK\u0003\u0004')])
    const { bytes, small } = await written(sent)
    for (const kept of [bytes, small]) expect(Buffer.from(kept).toString('latin1')).not.toMatch(/planted|PK\u0003/)
    expect(Buffer.from(bytes.subarray(-2))).toEqual(Buffer.from([0xff, 0xd9]))
  })

  it('has a small one for lists', async () => {
    const { small } = await written(await halves(1200, 600).jpeg().toBuffer())
    expect(lookAtHeader(small)).toEqual({ kind: 'jpeg', width: 320, height: 160 })
  })

  it('is written with less where it would come out too large, and stays within what is kept', async () => {
    const { bytes } = await written(await noise(2900, 2900).jpeg({ quality: 70 }).toBuffer())
    expect(bytes.length).toBeLessThanOrEqual(16 * 1024 * 1024)
  })
})

describe('what is not kept', () => {
  const svg = '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><rect width="9" height="9"/></svg>'
  it.each([
    ['nothing', () => Buffer.alloc(0), 'photo-not-a-picture'],
    ['an SVG', () => Buffer.from(svg), 'photo-not-a-picture'],
    ['a page', () => Buffer.from('<!doctype html><script>1</script>'), 'photo-not-a-picture'],
    ['a GIF', () => halves(8, 8).gif().toBuffer(), 'photo-not-a-picture'],
    ['a TIFF', () => halves(8, 8).tiff().toBuffer(), 'photo-not-a-picture'],
    ['a HEIC', () => Buffer.from('\0\0\0\u0018ftypheic\0\0\0\0mif1heic', 'latin1'), 'photo-heic'],
    ['a film', movingWebp, 'photo-moves'],
    ['a PNG that says it has over 50 megapixels', () => pngThatSays(10_000, 5_001), 'photo-too-many-pixels'],
    ['a PNG that says it has a thousand million', () => pngThatSays(0x7fffffff, 0x7fffffff), 'photo-too-many-pixels'],
    ['a PNG that is less than it says', () => pngThatSays(400, 400), 'photo-unreadable'],
    ['9 MB', () => Buffer.alloc(9 * 1024 * 1024, 0xff), 'photo-too-large'],
    ['a JPEG in name', () => Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 2, 0xff, 0xd9]), 'photo-cut-off'],
  ])('%s', async (_, make, fault) => {
    expect(await rewritePicture(await make())).toBe(fault)
  })

  it('a JPEG that holds a second frame', async () => {
    const one = await halves(8, 8).jpeg().toBuffer()
    const frame = one.indexOf(Buffer.from([0xff, 0xc0]))
    const length = 2 + one.readUInt16BE(frame + 2)
    const twice = Buffer.concat([one.subarray(0, frame + length), one.subarray(frame)])
    expect(lookAtHeader(twice)).toBe('photo-moves')
  })

  it('what is too large by its header is given to no decoder', async () => {
    const sent = [await pngThatSays(60_000, 60_000), Buffer.alloc(9 * 1024 * 1024), await pngThatSays(8_000, 8_000)]
    const decodes = vi.spyOn(sharp.prototype, 'toBuffer')
    for (const each of sent) expect(await rewritePicture(each)).toMatch(/^photo-too/)
    expect(decodes).not.toHaveBeenCalled()
    await rewritePicture(await pngThatSays(400, 400))
    expect(decodes).toHaveBeenCalled()
    decodes.mockRestore()
  })
})

describe('a picture that was cut off', () => {
  it.each([
    ['jpeg', () => fromCamera(200, 150)],
    ['a progressive jpeg', () => noise(60, 60).jpeg({ progressive: true }).toBuffer()],
    ['png', () => halves(60, 40).png().toBuffer()],
    ['webp', () => noise(60, 40).webp().toBuffer()],
  ])('anywhere is refused, a %s', async (_, make) => {
    const whole = await make()
    expect(typeof lookAtHeader(whole)).toBe('object')
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 0, max: whole.length - 1 }), async (length) => {
        expect(await rewritePicture(whole.subarray(0, length))).toMatch(/^photo-(cut-off|not-a-picture)$/)
      }),
      { seed: 71, numRuns: 60 },
    )
  })

  it('and whatever bytes come, looking at them answers or refuses, and never throws', () => {
    const marks = [
      [0xff, 0xd8, 0xff],
      [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a],
      [...Buffer.from('RIFF\u0009\0\0\0WEBPVP8X')],
    ]
    fc.assert(
      fc.property(fc.constantFrom([], ...marks), fc.uint8Array({ maxLength: 80 }), (mark, rest) => {
        expect(['string', 'object']).toContain(typeof lookAtHeader(Uint8Array.from([...mark, ...rest])))
      }),
      { seed: 72 },
    )
  })
})
