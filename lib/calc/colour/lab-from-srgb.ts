import { mustBeWithin } from '../checks'
import type { Lab } from './types'

/** Linear sRGB to XYZ, from the primaries and white of IEC 61966-2-1, seven digits. */
const TO_XYZ = [
  [0.4124564, 0.3575761, 0.1804375],
  [0.2126729, 0.7151522, 0.072175],
  [0.0193339, 0.119192, 0.9503041],
] as const

const [EPSILON, KAPPA] = [216 / 24389, 24389 / 27]

/**
 * An sRGB colour in CIELAB, light D65, 2° observer. White is what (255, 255, 255) gives, so that greys have no hue.
 * A camera's picture is close to sRGB only after its grey balance was set from a card.
 * @param red, green, blue 0 to 255, need not be whole
 * @returns not rounded; with the matrix of four digits the figures move by up to 0.02
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: IEC 61966-2-1 (sRGB); CIE 15 (CIELAB).
 * @example labFromSrgb({ red: 255, green: 0, blue: 0 }) // 53.24, 80.09, 67.20
 */
export function labFromSrgb(q: { red: number; green: number; blue: number }): Lab {
  const linear = (['red', 'green', 'blue'] as const).map((name) =>
    linearised(mustBeWithin(name, q[name], { min: 0, max: 255 }) / 255),
  )
  const [x, y, z] = TO_XYZ.map((row) => {
    const sum = row.reduce((total, weight, i) => total + weight * linear[i]!, 0)
    return sum / (row[0] + row[1] + row[2])
  }) as [number, number, number]
  return {
    // the dark end by its own line, so that black is 0 and not a rounding below it
    lightness: y > EPSILON ? 116 * Math.cbrt(y) - 16 : KAPPA * y,
    a: 500 * (compressed(x) - compressed(y)),
    b: 200 * (compressed(y) - compressed(z)),
  }
}

function linearised(value: number): number {
  return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4
}

function compressed(share: number): number {
  return share > EPSILON ? Math.cbrt(share) : (KAPPA * share + 16) / 116
}
