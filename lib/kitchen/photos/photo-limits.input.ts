/** Most bytes of a photo as it is sent. */
export const mostPhotoBytes = 8 * 1024 * 1024
/** Most pixels of a photo, known before it is decoded. */
export const mostPhotoPixels = 50_000_000
/** How many bytes each piece has in which a photo is sent and kept, but for the last. */
export const photoPieceBytes = 256 * 1024
/** What a photo can be, by its content. HEIC is left out, so that a phone hands over a JPEG. */
export const photoKinds = 'image/jpeg,image/png,image/webp'
/** Carries the SHA-256 of a piece, in hexadecimal, with it. */
export const pieceHashHeader = 'Evendough-Hash'

/** How long the piece with a number is, from 0; 0 where the photo has no such piece. */
export function lengthOfPiece(number: number, bytes: number): number {
  return Math.max(0, Math.min(photoPieceBytes, bytes - number * photoPieceBytes))
}

/** In how many pieces a photo goes. */
export function countOfPieces(bytes: number): number {
  return Math.ceil(bytes / photoPieceBytes)
}

/** A piece of a photo, from 0. */
export function pieceOfPhoto(bytes: Uint8Array<ArrayBuffer>, number: number): Uint8Array<ArrayBuffer> {
  return bytes.slice(number * photoPieceBytes, (number + 1) * photoPieceBytes)
}
