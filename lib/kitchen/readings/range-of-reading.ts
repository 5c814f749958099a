import 'server-only'
import type { PlausibleRange } from './plausible-range'

export type JudgedReading = { value: number; plausibleLeast: number | null; plausibleMost: number | null }

/**
 * The range that a reading was judged by when it was kept. One from before ranges were kept is judged by its measure's
 * own.
 */
export function rangeOfReading(
  reading: Omit<JudgedReading, 'value'>,
  measure: { plausibleLeast: number; plausibleMost: number },
): PlausibleRange {
  return {
    least: reading.plausibleLeast ?? measure.plausibleLeast,
    most: reading.plausibleMost ?? measure.plausibleMost,
  }
}

/** Whether a reading lies outside the range that it was judged by, and so is there because somebody confirmed it. */
export function isOutside(reading: JudgedReading, measure: { plausibleLeast: number; plausibleMost: number }): boolean {
  const { least, most } = rangeOfReading(reading, measure)
  return reading.value < least || reading.value > most
}

/** The range that a reading is outside of; null when it is within, or its measure is not among these. */
export function outsideOf(
  reading: JudgedReading & { measureId: string },
  measures: readonly { id: string; plausibleLeast: number; plausibleMost: number }[],
): PlausibleRange | null {
  const measure = measures.find(({ id }) => id === reading.measureId)
  return measure && isOutside(reading, measure) ? rangeOfReading(reading, measure) : null
}
