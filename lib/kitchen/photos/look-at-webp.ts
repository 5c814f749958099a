import 'server-only'
import type { Header, HeaderFault } from './look-at-header'

const moves = 0x02

/** Reads the first chunk of a WebP, which says how large it is (RFC 9649, 2.3 to 2.7), and that the rest is there. */
export function lookAtWebp(view: Buffer): Header | HeaderFault {
  if (view.length < 30 || view.readUInt32LE(4) + 8 > view.length) return 'photo-cut-off'
  const size = sizeIn(view)
  if (size === 'photo-moves') return size
  return size && size.width > 0 && size.height > 0 ? { kind: 'webp', ...size } : 'photo-cut-off'
}

function sizeIn(view: Buffer): { width: number; height: number } | 'photo-moves' | null {
  switch (view.toString('latin1', 12, 16)) {
    case 'VP8 ':
      return view.readUIntBE(23, 3) === 0x9d012a
        ? { width: view.readUInt16LE(26) & 0x3fff, height: view.readUInt16LE(28) & 0x3fff }
        : null
    case 'VP8L': {
      if (view[20] !== 0x2f) return null
      const bits = view.readUInt32LE(21)
      return { width: (bits & 0x3fff) + 1, height: ((bits >>> 14) & 0x3fff) + 1 }
    }
    case 'VP8X':
      return (view.readUInt8(20) & moves) !== 0
        ? 'photo-moves'
        : { width: view.readUIntLE(24, 3) + 1, height: view.readUIntLE(27, 3) + 1 }
    default:
      return null
  }
}
