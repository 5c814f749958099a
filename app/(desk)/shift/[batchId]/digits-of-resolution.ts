import 'server-only'

/**
 * Digits after the decimal mark that a scale shows in g; one where no scale is named.
 * @example digitsOfResolution(0.05) // 2
 */
export function digitsOfResolution(resolutionG: number | null): number {
  if (resolutionG === null) return 1
  const digits = /\.(\d+)$/.exec(resolutionG.toFixed(6).replace(/\.?0+$/, ''))?.[1]
  return digits?.length ?? 0
}
