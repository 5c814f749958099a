import 'server-only'
import bwip from 'bwip-js/node'

/** A QR code (ISO/IEC 18004): its squares row by row, true where dark, without the light edge around it. */
export type QrCode = boolean[][]

/** The QR code of an address, at the level at which a sixth of it may be floury (M). */
export function qrCode(text: string): QrCode {
  const [code] = bwip.raw('qrcode', text, 'eclevel=M')
  if (!code || !('pixs' in code)) throw new Error('a QR code came without squares')
  const { pixs, pixx, pixy } = code
  return Array.from({ length: pixy }, (_, row) =>
    pixs.slice(row * pixx, (row + 1) * pixx).map((square) => square === 1),
  )
}
