import 'server-only'
import type { Header, HeaderFault } from './look-at-header'

const aroundChunk = 12

/** Follows a PNG from chunk to chunk to its end (W3C Portable Network Graphics, third edition, 5.3). */
export function lookAtPng(view: Buffer): Header | HeaderFault {
  let size: { width: number; height: number } | null = null
  let hasData = false
  for (let at = 8; at + aroundChunk <= view.length; ) {
    const length = view.readUInt32BE(at)
    const type = view.toString('latin1', at + 4, at + 8)
    if (at + aroundChunk + length > view.length) return 'photo-cut-off'
    if (size === null) {
      if (type !== 'IHDR' || length !== 13) return 'photo-cut-off'
      size = { width: view.readUInt32BE(at + 8), height: view.readUInt32BE(at + 12) }
      if (size.width === 0 || size.height === 0) return 'photo-cut-off'
    }
    if (type === 'acTL') return 'photo-moves'
    if (type === 'IDAT') hasData = true
    if (type === 'IEND') return hasData ? { kind: 'png', ...size } : 'photo-cut-off'
    at += aroundChunk + length
  }
  return 'photo-cut-off'
}
