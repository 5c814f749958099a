import type { FloorInstrument } from '../keep/facts'

/**
 * What an instrument is checked with: the test weight of a scale, the block of a volume gauge, as the bakery has said it,
 * and the most that it carries or holds, g or mL; null for a thermometer, which is checked in ice.
 */
export function standardOf({ kind, testMassG, mostG, blockMl, volumeMl }: FloorInstrument) {
  if (kind === 'scale') return { known: testMassG, most: mostG ?? Infinity }
  return kind === 'volume_gauge' ? { known: blockMl, most: volumeMl ?? Infinity } : null
}
