import sharp, { type Sharp } from 'sharp'

/** A picture of two halves, red on the left and blue on the right, so that a turn shows. */
export function halves(width: number, height: number): Sharp {
  const pixels = Buffer.alloc(width * height * 3)
  for (let at = 0; at < width * height; at++) pixels[at * 3 + (at % width < width / 2 ? 0 : 2)] = 255
  return sharp(pixels, { raw: { width, height, channels: 3 } })
}

/** A JPEG as a camera writes one: with where and by what it was taken, and lying on its side where asked. */
export async function fromCamera(width = 60, height = 40, orientation = 1): Promise<Buffer> {
  return halves(width, height)
    .withExif({
      IFD0: { Make: 'Planted camera', Model: 'Planted model' },
      IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1', GPSLongitudeRef: 'E', GPSLongitude: '7/1 0/1 0/1' },
    })
    .withMetadata({ orientation })
    .jpeg()
    .toBuffer()
}

/** Pixels that nothing compresses, the same each time. */
export function noise(width: number, height: number): Sharp {
  const pixels = Buffer.alloc(width * height * 3)
  let state = 0x2545f491
  for (let at = 0; at < pixels.length; at++) {
    state ^= state << 13
    state ^= state >>> 17
    state ^= state << 5
    pixels[at] = state & 0xff
  }
  return sharp(pixels, { raw: { width, height, channels: 3 } })
}

/** A PNG whose header says that it is as large as this, with next to nothing behind it. */
export async function pngThatSays(width: number, height: number): Promise<Buffer> {
  const small = await halves(4, 4).png().toBuffer()
  small.writeUInt32BE(width, 16)
  small.writeUInt32BE(height, 20)
  return small
}

/** Two pictures in one WebP, shown one after the other. */
export async function movingWebp(): Promise<Buffer> {
  const frames = await Promise.all([noise(8, 8), halves(8, 8)].map((frame) => frame.png().toBuffer()))
  return sharp(frames, { join: { animated: true } })
    .webp({ delay: [100, 100] })
    .toBuffer()
}
