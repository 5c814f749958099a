import 'server-only'
import sharp from 'sharp'
import { lookAtHeader, type HeaderFault } from './look-at-header'
import { mostPhotoBytes, mostPhotoPixels } from './photo-limits.input'

/** A picture as it is kept: a JPEG that holds nothing but its pixels, upright. */
export type Picture = { bytes: Uint8Array<ArrayBuffer>; small: Uint8Array<ArrayBuffer>; width: number; height: number }

export type PictureFault = HeaderFault | 'photo-too-large' | 'photo-too-many-pixels' | 'photo-unreadable'

/** What is kept of one picture, at most. */
const mostKeptBytes = 16 * 1024 * 1024
/** One that comes out larger at the first is written with less. */
const qualities = [90, 75, 60]
/** Nobody waits longer for a picture. */
const longestS = 20
/** The longer side of what stands in lists. */
const smallSide = 320

/**
 * Writes a picture anew: turned upright, in sRGB, without anything that came with it (place, device, what hangs behind its
 * end). What it is and how large is looked at before anything of it is decoded.
 */
export async function rewritePicture(sent: Uint8Array): Promise<Picture | PictureFault> {
  if (sent.length > mostPhotoBytes) return 'photo-too-large'
  const header = lookAtHeader(sent)
  if (typeof header === 'string') return header
  if (header.width * header.height > mostPhotoPixels) return 'photo-too-many-pixels'
  try {
    for (const quality of qualities) {
      const { data, info } = await sharp(sent, {
        failOn: 'error',
        limitInputPixels: mostPhotoPixels,
        sequentialRead: true,
      })
        .timeout({ seconds: longestS })
        .autoOrient()
        .flatten({ background: 'white' })
        .jpeg({ quality, chromaSubsampling: '4:4:4' })
        .toBuffer({ resolveWithObject: true })
      if (data.length > mostKeptBytes) continue
      const small = await sharp(data)
        .resize(smallSide, smallSide, { fit: 'inside', withoutEnlargement: true })
        .jpeg({ quality: 70 })
        .toBuffer()
      return { bytes: new Uint8Array(data), small: new Uint8Array(small), width: info.width, height: info.height }
    }
    return 'photo-too-large'
  } catch {
    // Whatever the library found wrong with it, there is nothing to keep.
    return 'photo-unreadable'
  }
}
