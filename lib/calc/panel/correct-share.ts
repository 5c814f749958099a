import { mustBeWithin } from '../checks'
import { normalTail } from '../distributions/normal-tail'
import { owensT } from './owens-t'
import type { KnownAnswerTest } from './types'

export type CorrectShare = {
  /** Share of right answers. */
  correctShare: number
  /** Its rise per unit of d′. */
  slope: number
}

const [ROOT_2, ROOT_3, ROOT_6] = [Math.SQRT2, Math.sqrt(3), Math.sqrt(6)]

/**
 * Share of right answers for a difference d′, Thurstone's model with one normal spread for both samples
 * (the psychometric function), and its slope. In closed form, the triangle and 3-AFC by Owen's T:
 * paired Φ(d/√2); duo-trio 1 − Φ(d/√2) − Φ(d/√6) + 2 Φ(d/√2) Φ(d/√6); triangle 1 − 4 T(d/√6, √3);
 * 3-AFC Φ(d/√2) − 2 T(d/√2, 1/√3).
 * @param dPrime distance of the two means in standard deviations, 0 ≤ d′ ≤ 30
 * @returns about 1e-14 relative
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Ennis (1993), Journal of Sensory Studies 8; Frijters (1979), British Journal of Mathematical and Statistical
 * Psychology 32; the closed forms follow from their integrals by taking the slope first.
 * @example correctShare({ test: 'triangle', dPrime: 1 }).correctShare // 0.418
 */
export function correctShare(q: { test: KnownAnswerTest; dPrime: number }): CorrectShare {
  const d = mustBeWithin('dPrime', q.dPrime, { min: 0, max: 30 })
  switch (q.test) {
    case 'paired':
      return { correctShare: below(d / ROOT_2), slope: density(d / ROOT_2) / ROOT_2 }
    case 'duo-trio': {
      const [near, far] = [below(d / ROOT_2), below(d / ROOT_6)]
      return {
        correctShare: 1 - near - far + 2 * near * far,
        slope: (density(d / ROOT_2) / ROOT_2) * (2 * far - 1) + (density(d / ROOT_6) / ROOT_6) * (2 * near - 1),
      }
    }
    case 'triangle':
      return {
        correctShare: 1 - 4 * owensT({ h: d / ROOT_6, a: ROOT_3 }),
        slope: (2 / ROOT_6) * density(d / ROOT_6) * (2 * below(d / ROOT_2) - 1),
      }
    case 'three-afc':
      return {
        correctShare: below(d / ROOT_2) - 2 * owensT({ h: d / ROOT_2, a: 1 / ROOT_3 }),
        slope: ROOT_2 * density(d / ROOT_2) * below(d / ROOT_6),
      }
  }
}

function below(z: number): number {
  return normalTail({ z, tail: 'lower' })
}

function density(z: number): number {
  return Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI)
}
