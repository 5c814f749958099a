import type { NetWeightCaution } from './types'

/**
 * What has to be said of packages below the second limit.
 * Source: Directive 76/211/EEC, Annex I, 1.3.
 */
export function lightCautions({ belowAbsolute }: { belowAbsolute: number }): NetWeightCaution[] {
  return belowAbsolute > 0 ? ['light-package-not-for-sale'] : []
}
