import { CalcError } from '../error'

/**
 * Demands as many packages as the plan weighs: with another number its factors and counts mean nothing, and whoever may
 * choose the number can weigh until it passes.
 * @param contentsG net contents of the sample; @param packages what the plan weighs
 * @throws CalcError 'wrong-shape' at 'contentsG' with reason 'not-the-plans-sample'
 * Source: common practice, no source.
 */
export function mustBePlansSample(contentsG: readonly number[], packages: number): void {
  if (contentsG.length === packages) return
  throw new CalcError('wrong-shape', {
    field: 'contentsG',
    value: contentsG.length,
    min: packages,
    max: packages,
    reason: 'not-the-plans-sample',
  })
}
