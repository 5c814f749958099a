import { mostPhotoBytes, mostPhotoPixels, photoKinds } from '../../kitchen/photos/photo-limits.input'

/** A photo as it can be sent, and a small one to show. */
export type ReadyPhoto = { bytes: Uint8Array<ArrayBuffer>; small: Blob }

/** Of what is made smaller: as many pixels as a good camera has. */
const shrunkPixels = 12_000_000
const smallSide = 320

/**
 * Makes of what a camera or a folder gave what the book takes: the very file, or, where that is too large or of a kind that
 * the book does not take, a smaller JPEG.
 * @throws where the browser cannot read it as a picture
 */
export async function readyPhoto(file: Blob): Promise<ReadyPhoto> {
  const picture = await createImageBitmap(file, { imageOrientation: 'from-image' })
  try {
    const pixels = picture.width * picture.height
    const isFine = file.size <= mostPhotoBytes && pixels <= mostPhotoPixels && photoKinds.split(',').includes(file.type)
    const scale = Math.min(1, Math.sqrt(shrunkPixels / pixels))
    const sent = isFine ? file : await drawn(picture, scale, 0.9)
    const small = await drawn(picture, Math.min(1, smallSide / Math.max(picture.width, picture.height)), 0.7)
    return { bytes: new Uint8Array(await sent.arrayBuffer()), small }
  } finally {
    picture.close()
  }
}

async function drawn(picture: ImageBitmap, scale: number, quality: number): Promise<Blob> {
  const canvas = document.createElement('canvas')
  canvas.width = Math.max(1, Math.round(picture.width * scale))
  canvas.height = Math.max(1, Math.round(picture.height * scale))
  const context = canvas.getContext('2d')
  if (!context) throw new Error('this browser draws nothing')
  context.fillStyle = 'white'
  context.fillRect(0, 0, canvas.width, canvas.height)
  context.drawImage(picture, 0, 0, canvas.width, canvas.height)
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', quality))
  if (!blob) throw new Error('this browser writes no JPEG')
  return blob
}
