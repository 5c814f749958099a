import 'server-only'
import { MOST_VOLUME_RATIO } from '../../calc/cost/same-volume-price'
import type { Comparison } from './compare-arms'
import { countBatches } from './count-batches'
import type { DeclaredTrial, MeasuredBatch } from './trial-facts'

/** Volume of a loaf over the control's, with the ends of its interval; null where there is none. */
export type VolumeRatio = { ratio: number; low: number | null; high: number | null }

/** By position of the arm; an arm of which no loaf's volume was measured has none. */
export type VolumeRatios = ReadonlyMap<number, VolumeRatio>

/** Code of the standard measure. */
export const volumeCode = 'loaf-volume'

/** Volumes have no margin of their own, and no interval depends on it. */
const anyMarginPct = 5

/**
 * The trial as one of loaf volume, on the doughs that count and by the rule that was declared; null where no loaf's volume
 * was measured.
 */
export function asOfVolume(
  declared: DeclaredTrial,
  batches: readonly MeasuredBatch[],
): { declared: DeclaredTrial; batches: MeasuredBatch[] } | null {
  const { counted } = countBatches({ factor: declared.factor, batches })
  if (counted.every(({ batch }) => batch.pieces.every(({ volumeMl }) => volumeMl === null))) return null
  return {
    declared: {
      ...declared,
      measure: { name: volumeCode, unit: 'mL', digits: 0, direction: 'larger' },
      margin: anyMarginPct,
      marginUnit: 'pct',
    },
    batches: counted.map(({ batch }) => ({
      ...batch,
      pieces: batch.pieces.map((piece) => ({ ...piece, value: piece.volumeMl })),
    })),
  }
}

/**
 * The ratios of a comparison of loaf volume. An end below nothing is nothing: no loaf has less volume than none; an
 * interval without an end, or beyond every loaf, is none.
 */
export function ratiosOf({ arms }: Pick<Comparison, 'arms'>): VolumeRatios {
  return new Map(
    arms.flatMap(({ arm, effect }): [number, VolumeRatio][] => {
      const ratio = ratioOf(effect?.pct ?? null)
      if (ratio === null) return []
      const [low, high] = [ratioOf(effect?.lowPct ?? null), ratioOf(effect?.highPct ?? null)]
      return [[arm, low === null || high === null ? { ratio, low: null, high: null } : { ratio, low, high }]]
    }),
  )
}

function ratioOf(pct: number | null): number | null {
  if (pct === null) return null
  const ratio = Math.max(0, 1 + pct / 100)
  return ratio <= MOST_VOLUME_RATIO ? ratio : null
}
