import { mustBeGiven, mustBeWithin } from '../checks'

/** Millimetres in an inch, exactly. */
const MM_PER_INCH = 25.4

/**
 * Size of a pixel of a scan: from the dots per inch it was scanned at, or from a ruler that was scanned along. Scanners
 * and files lie about their dpi: a ruler in the scan is the better measure.
 * @param by 'dpi' needs resolutionDpi, over 0 to 100,000; 'ruler' needs rulerMm > 0 and rulerPixels > 0
 * @returns side of a pixel, µm; its area, mm²; and dots per inch
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'not-given'
 * Source: definition of the inch, 25.4 mm.
 * @example 300 dpi: 84.667 µm, 0.0071684 mm²
 */
export function scanScale(q: {
  by: 'dpi' | 'ruler'
  resolutionDpi?: number | undefined
  rulerMm?: number | undefined
  rulerPixels?: number | undefined
}): { pixelUm: number; pixelAreaMm2: number; scannedDpi: number } {
  const pixelMm =
    q.by === 'dpi'
      ? MM_PER_INCH / given('resolutionDpi', q.resolutionDpi, 100_000)
      : given('rulerMm', q.rulerMm, 1e6) / given('rulerPixels', q.rulerPixels, 1e9)
  return { pixelUm: 1000 * pixelMm, pixelAreaMm2: pixelMm * pixelMm, scannedDpi: MM_PER_INCH / pixelMm }
}

function given(field: string, value: number | undefined, max: number): number {
  return mustBeWithin(field, mustBeGiven(field, value), { over: 0, max })
}
