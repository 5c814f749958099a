import { mustBeWithin } from '../checks'

export type RiseCurveKind = 'gompertz' | 'logistic'
export type RiseCurve = { mostRisePct: number; steepestPctPerMin: number; lagMin: number }

/** Rise at a time and its slopes against most rise, steepest slope and lag. The slope against time is the last, negated. */
export type RisePoint = { risePct: number; gradient: [number, number, number] }

/**
 * A sigmoid of rise against time, by its most rise A, its steepest slope µ and its lag λ (where the steepest line meets
 * no rise). Gompertz: A·exp(−exp(µe/A·(λ − t) + 1)); logistic: A/(1 + exp(4µ/A·(λ − t) + 2)).
 * @param atMin minutes; mostRisePct % > 0; steepestPctPerMin > 0; lagMin minutes, may lie before the first reading
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: M. H. Zwietering et al. (1990), Applied and Environmental Microbiology 56: 1875–1881; for rise of dough the
 *   Gompertz curve: A. Romano et al. (2007), Journal of Food Engineering 83: 142–148.
 */
export function riseAt(q: RiseCurve & { kind: RiseCurveKind; atMin: number }): RisePoint {
  const most = mustBeWithin('mostRisePct', q.mostRisePct, { over: 0 })
  const steep = mustBeWithin('steepestPctPerMin', q.steepestPctPerMin, { over: 0 })
  const before = mustBeWithin('lagMin', q.lagMin) - mustBeWithin('atMin', q.atMin)
  switch (q.kind) {
    case 'gompertz': {
      const u = ((steep * Math.E) / most) * before + 1
      const inner = Math.exp(u)
      const share = Math.exp(-inner)
      // exp(u)·exp(−exp(u)), which is 0 and not 0·∞ long before the rise begins.
      const slope = Math.exp(u - inner)
      return {
        risePct: most * share,
        gradient: [share + (slope * steep * Math.E * before) / most, -slope * Math.E * before, -slope * Math.E * steep],
      }
    }
    case 'logistic': {
      const share = 1 / (1 + Math.exp(((4 * steep) / most) * before + 2))
      const slope = 4 * share * (1 - share)
      return {
        risePct: most * share,
        gradient: [share + (slope * steep * before) / most, -slope * before, -slope * steep],
      }
    }
    default: {
      const never: never = q.kind
      return never
    }
  }
}
