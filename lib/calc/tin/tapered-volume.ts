import { mustBeWithin } from '../checks'

/** Cubic mm in a mL. */
const MM3_PER_ML = 1000

/** Longer than any tin. */
const LONGEST_MM = 5000

/**
 * Volume of a tin with straight sloping sides: depth / 6 × (top + base + 4 × middle), the middle having the mean sides.
 * Exact for flat sides and sharp corners; rounded corners and rims make the tin smaller than that or larger than it
 * looks, so water in the tin is the better measure.
 * @param topLengthMm, topWidthMm, baseLengthMm, baseWidthMm, depthMm inside, over 0 to 5000 mm
 * @returns volume, and what top times depth would have given, mL
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: prismoidal formula; any text on mensuration.
 * @example top 216 × 114, base 190 × 89, depth 66 mm: 1363 mL
 */
export function taperedVolume(q: {
  topLengthMm: number
  topWidthMm: number
  baseLengthMm: number
  baseWidthMm: number
  depthMm: number
}): {
  tinVolumeMl: number
  topTimesDepthMl: number
} {
  const side = (field: keyof typeof q) => mustBeWithin(field, q[field], { over: 0, max: LONGEST_MM })
  const [topLength, topWidth, baseLength, baseWidth, depth] = [
    side('topLengthMm'),
    side('topWidthMm'),
    side('baseLengthMm'),
    side('baseWidthMm'),
    side('depthMm'),
  ]
  const top = topLength * topWidth
  const fourMiddles = (topLength + baseLength) * (topWidth + baseWidth)
  return {
    tinVolumeMl: ((depth / 6) * (top + baseLength * baseWidth + fourMiddles)) / MM3_PER_ML,
    topTimesDepthMl: (top * depth) / MM3_PER_ML,
  }
}
