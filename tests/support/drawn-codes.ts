/** A code as it is drawn: its squares row by row, true where dark. */
export type Drawn = readonly (readonly boolean[])[]
/** Grey values row by row, 0 for black. */
export type Grey = { width: number; height: number; data: Uint8Array }

/**
 * Widths of bars and gaps, bar first, by a sign's value (ISO/IEC 15417, table 1; from memory, so the test reads what is
 * drawn by them with a reader that is not ours).
 */
const widths =
  `212222 222122 222221 121223 121322 131222 122213 122312 132212 221213 221312 231212 112232 122132 122231 113222
123122 123221 223211 221132 221231 213212 223112 312131 311222 321122 321221 312212 322112 322211 212123 212321 232121 111323
131123 131321 112313 132113 132311 211313 231113 231311 112133 112331 132131 113123 113321 133121 313121 211331 231131 213113
213311 213131 311123 311321 331121 312113 312311 332111 314111 221411 431111 111224 111422 121124 121421 141122 141221 112214
112412 122114 122411 142112 142211 241211 221114 413111 241112 134111 111242 121142 121241 114212 124112 124211 411212 421112
421211 212141 214121 412121 111143 111341 131141 114113 114311 411113 411311 113141 114131 311141 411131 211412 211214 211232
2331112`.split(/\s+/)
const startB = 104
const stop = 106

/** A text in Code 128, code set B. @param text signs from blank to tilde */
export function code128(text: string): Drawn {
  const values = Array.from(text, (sign) => {
    const value = sign.charCodeAt(0) - 32
    if (value < 0 || value > 94) throw new Error(`code set B has no ${JSON.stringify(sign)}`)
    return value
  })
  const check = values.reduce((sum, value, at) => sum + value * (at + 1), startB) % 103
  const row = [startB, ...values, check, stop].flatMap((value) =>
    Array.from(widths[value] ?? '').flatMap((width, at) => Array<boolean>(Number(width)).fill(at % 2 === 0)),
  )
  return Array.from({ length: 24 }, () => row)
}

/** Codes beside each other on white, each with the white edge that its standard wants. @param scale points a square */
export function onPaper(codes: readonly Drawn[], scale: number, size?: { width: number; height: number }): Grey {
  const edge = 12 * scale
  const across = codes.map((code) => (code[0]?.length ?? 0) * scale)
  const least = {
    width: across.reduce((sum, each) => sum + each + edge, edge),
    height: Math.max(0, ...codes.map((code) => code.length * scale)) + 2 * edge,
  }
  const { width, height } = size ?? least
  if (width < least.width || height < least.height) throw new Error(`the codes need ${least.width} × ${least.height}`)
  const data = new Uint8Array(width * height).fill(255)
  let left = Math.floor((width - least.width) / 2) + edge
  for (const [at, code] of codes.entries()) {
    const top = Math.floor((height - code.length * scale) / 2)
    for (const [y, row] of code.entries())
      for (const [x, isDark] of row.entries())
        if (isDark)
          for (let line = 0; line < scale; line++) {
            const from = (top + y * scale + line) * width + left + x * scale
            data.fill(0, from, from + scale)
          }
    left += (across[at] ?? 0) + edge
  }
  return { width, height, data }
}

/** As a canvas gives it. */
export function toImageData({ width, height, data }: Grey) {
  const four = new Uint8ClampedArray(width * height * 4)
  for (const [at, grey] of data.entries()) four.set([grey, grey, grey, 255], at * 4)
  return { width, height, data: four }
}

/** A video of pictures of one size, for a browser's camera that is none (YUV4MPEG2, as Chromium reads it); it repeats them. */
export function toVideo(frames: readonly Grey[]): Buffer {
  const [first] = frames
  if (!first) throw new Error('a video has pictures')
  const { width, height } = first
  const colours = Buffer.alloc((width / 2) * (height / 2) * 2, 128)
  return Buffer.concat([
    Buffer.from(`YUV4MPEG2 W${width} H${height} F10:1 Ip A1:1 C420jpeg\n`),
    ...frames.flatMap(({ data }) => [Buffer.from('FRAME\n'), data, colours]),
  ])
}
