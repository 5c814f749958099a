import 'server-only'
import type { Header, HeaderFault } from './look-at-header'

/** Starts of a frame: all of C0 to CF but the tables among them. */
const isFrame = (marker: number) => marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker)
const isAlone = (marker: number) => marker === 0x01 || (marker >= 0xd0 && marker <= 0xd7)
const [scanBegins, pictureEnds] = [0xda, 0xd9]

/** Follows a JPEG from marker to marker to its end (ITU-T T.81, B.1); a small picture inside of one is stepped over. */
export function lookAtJpeg(view: Buffer): Header | HeaderFault {
  let size: { width: number; height: number } | null = null
  let hasScan = false
  let at = 2
  while (at + 1 < view.length) {
    if (view[at] !== 0xff) return 'photo-cut-off'
    const marker = view.readUInt8(at + 1)
    if (marker === 0xff) {
      at += 1
      continue
    }
    if (marker === pictureEnds) return size && hasScan ? { kind: 'jpeg', ...size } : 'photo-cut-off'
    if (isAlone(marker)) {
      at += 2
      continue
    }
    if (at + 3 >= view.length) return 'photo-cut-off'
    const length = view.readUInt16BE(at + 2)
    if (length < 2 || at + 2 + length > view.length) return 'photo-cut-off'
    if (isFrame(marker)) {
      if (size) return 'photo-moves'
      if (length < 8) return 'photo-cut-off'
      size = { height: view.readUInt16BE(at + 5), width: view.readUInt16BE(at + 7) }
      if (size.width === 0 || size.height === 0) return 'photo-cut-off'
    }
    at += 2 + length
    if (marker === scanBegins) {
      hasScan = true
      at = endOfScan(view, at)
    }
  }
  return 'photo-cut-off'
}

/** Where the next marker stands behind the data of a scan; the length of all where there is none. */
function endOfScan(view: Buffer, from: number): number {
  let at = view.indexOf(0xff, from)
  while (at !== -1 && at + 1 < view.length) {
    const next = view.readUInt8(at + 1)
    if (next !== 0 && next !== 0xff && !isAlone(next)) return at
    at = view.indexOf(0xff, next === 0xff ? at + 1 : at + 2)
  }
  return view.length
}
