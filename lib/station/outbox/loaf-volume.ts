import { displacedVolumeMl } from '../../calc/loaf/displaced-volume'
import { CalcError } from '../../calc/error'

export type LoafVolume = { outcome: 'volume'; volume: string } | { outcome: 'not-more' } | { outcome: 'too-large' }

/**
 * The volume of a loaf by what a gauge shows with it and without it, as it is typed on a pad: with as many digits as the
 * finer of the two readings. No offset is taken off: that is for whoever reads it to know.
 * @param withLoaf plain number, mL, as `readTyped` gives it
 * @param mostMl what the largest gauge holds; Infinity where none is known
 */
export function loafVolume(q: { withLoaf: string; without: string; mostMl: number }): LoafVolume {
  const digits = Math.max(digitsOf(q.withLoaf), digitsOf(q.without))
  try {
    const readings = { withLoafMl: Number(q.withLoaf), withoutLoafMl: Number(q.without) }
    const volume = displacedVolumeMl({ ...readings, offsetMl: 0 }).toFixed(digits)
    return Number(volume) > q.mostMl ? { outcome: 'too-large' } : { outcome: 'volume', volume }
  } catch (error) {
    if (error instanceof CalcError) return { outcome: 'not-more' }
    throw error
  }
}

function digitsOf(typed: string): number {
  return typed.split('.')[1]?.length ?? 0
}
