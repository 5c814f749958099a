import 'server-only'
import { lookAtJpeg } from './look-at-jpeg'
import { lookAtPng } from './look-at-png'
import { lookAtWebp } from './look-at-webp'

export type Header = { kind: 'jpeg' | 'png' | 'webp'; width: number; height: number }

/** Why the content of a file cannot be kept as a photo. */
export type HeaderFault = 'photo-not-a-picture' | 'photo-heic' | 'photo-cut-off' | 'photo-moves'

/** Marks by which the form that phones write, and browsers cannot show, is known. */
const heicMarks = new Set(['heic', 'heix', 'hevc', 'hevx', 'heim', 'heis', 'mif1', 'msf1', 'avif', 'avis'])

/**
 * Looks at what a file is by its content alone, without decoding any of it: its kind, how large its picture is, that there
 * is one of it, and that its end is there. What is behind the end is nobody's concern, because it is never kept.
 */
export function lookAtHeader(bytes: Uint8Array): Header | HeaderFault {
  const view = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  if (startsWith(view, [0xff, 0xd8, 0xff])) return lookAtJpeg(view)
  if (startsWith(view, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])) return lookAtPng(view)
  if (view.toString('latin1', 0, 4) === 'RIFF' && view.toString('latin1', 8, 12) === 'WEBP') return lookAtWebp(view)
  if (view.toString('latin1', 4, 8) === 'ftyp' && heicMarks.has(view.toString('latin1', 8, 12))) return 'photo-heic'
  return 'photo-not-a-picture'
}

function startsWith(view: Buffer, mark: readonly number[]): boolean {
  return mark.every((byte, at) => view[at] === byte)
}
