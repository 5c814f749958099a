import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import type { ActiveSource, CustomaryRange, DoseLimit, FormConversion } from './types'

export type LimitFinding = {
  limitId: string
  /**
   * 'over-checked-limit' and 'not-permitted' rest on a checked limit: such a bake is neither eaten nor sold.
   * The 'unchecked' codes and 'cannot-judge' warn.
   */
  code:
    | 'within-checked-limit'
    | 'within-unchecked-limit'
    | 'as-needed'
    | 'over-checked-limit'
    | 'over-unchecked-limit'
    | 'not-permitted'
    | 'not-permitted-unchecked'
    | 'cannot-judge'
  /** In the limit's form and basis; null when it cannot be worked out. */
  mgPerKg: number | null
  maxMgPerKg: number | null
  /** What was missing for a judgement. */
  missing: ('form-conversion' | 'finished-food-mass' | 'flour-content')[]
}

export type CustomaryFinding = {
  substance: string
  code: 'customary' | 'below-customary' | 'above-customary' | 'cannot-judge'
  /** In the range's form; null when a factor to that form is missing. */
  mgPerKgFlour: number | null
}

/** A printed limit is rounded to about three digits: 45.195 ppm is printed as 45. More than this is no rounding. */
const MOST_PRINTED_ROUNDING_SHARE = 0.005

/**
 * Compares a dose with customary ranges (outside: a warning, textbooks and suppliers disagree) and with legal limits.
 * The same active is added up over all its sources, in the form that range or limit speaks of. What is not permitted may
 * not come in with the flour either, whether or not a limit counts what the flour holds. Strength lost in storage is not taken off: what was added counts.
 * A limit that cannot be judged for want of data says so and never passes.
 * @param sources lines that bring actives; massG ≥ 0, 0 < activeShare ≤ 1
 * @param flourMassG total flour, g, > 0
 * @param finishedFoodPer100Flour bread from 100 parts of flour (bread yield), > 0; null when not known
 * @param flourContentMgPerKg actives that the flour brought from the mill, mg/kg in each limit's form, by substance;
 *   a substance that is not in it is not known
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'range-reversed';
 *   'duplicate' when two factors are given for one pair of forms
 * Source: mass balance; limits carry their own sources. Local rules and the competent authority decide.
 */
export function checkDose(q: {
  sources: readonly ActiveSource[]
  flourMassG: number
  finishedFoodPer100Flour: number | null
  flourContentMgPerKg: Readonly<Record<string, number>>
  conversions: readonly FormConversion[]
  customary: readonly CustomaryRange[]
  limits: readonly DoseLimit[]
}): { customary: CustomaryFinding[]; limits: LimitFinding[] } {
  mustBeWithin('flourMassG', q.flourMassG, { over: 0 })
  if (q.finishedFoodPer100Flour !== null)
    mustBeWithin('finishedFoodPer100Flour', q.finishedFoodPer100Flour, { over: 0 })
  q.sources.forEach((source, i) => {
    mustBeWithin(`sources[${i}].massG`, source.massG, { min: 0 })
    mustBeWithin(`sources[${i}].activeShare`, source.activeShare, { over: 0, max: 1 })
  })
  q.conversions.forEach((one, i) => {
    mustBeWithin(`conversions[${i}].factor`, one.factor, { over: 0 })
    if (q.conversions.slice(0, i).some((before) => before.from === one.from && before.to === one.to)) {
      throw new CalcError('duplicate', { field: `conversions[${i}].to`, value: one.to })
    }
  })
  for (const [substance, content] of Object.entries(q.flourContentMgPerKg)) {
    mustBeWithin(`flourContentMgPerKg.${substance}`, content, { min: 0 })
  }
  return {
    customary: q.customary.map((range, i) => customaryFinding(q, range, i)),
    limits: q.limits.map((limit, i) => limitFinding(q, limit, i)),
  }
}

function mgPerKgFlour(massG: number, flourMassG: number): number {
  return (massG / flourMassG) * 1e6
}

/** Mass of the substances in a form, g, over all sources; not whole when a factor to that form is missing. */
function massInForm(
  q: Parameters<typeof checkDose>[0],
  substances: readonly string[],
  form: string,
): { massG: number; isWhole: boolean } {
  let massG = 0
  let isWhole = true
  for (const source of q.sources) {
    if (!substances.includes(source.substance) || source.massG === 0) continue
    const factor =
      source.form === form ? 1 : q.conversions.find((one) => one.from === source.form && one.to === form)?.factor
    if (factor === undefined) isWhole = false
    else massG += source.massG * source.activeShare * factor
  }
  return { massG, isWhole }
}

function customaryFinding(q: Parameters<typeof checkDose>[0], range: CustomaryRange, i: number): CustomaryFinding {
  mustBeWithin(`customary[${i}].minMgPerKgFlour`, range.minMgPerKgFlour, { min: 0 })
  if (range.maxMgPerKgFlour < range.minMgPerKgFlour) {
    throw new CalcError('not-possible', {
      field: `customary[${i}].maxMgPerKgFlour`,
      value: range.maxMgPerKgFlour,
      reason: 'range-reversed',
    })
  }
  const { massG, isWhole } = massInForm(q, [range.substance], range.form)
  if (!isWhole) return { substance: range.substance, code: 'cannot-judge', mgPerKgFlour: null }
  const found = mgPerKgFlour(massG, q.flourMassG)
  const code =
    found < range.minMgPerKgFlour ? 'below-customary' : found > range.maxMgPerKgFlour ? 'above-customary' : 'customary'
  return { substance: range.substance, code, mgPerKgFlour: found }
}

function limitFinding(q: Parameters<typeof checkDose>[0], limit: DoseLimit, i: number): LimitFinding {
  if (limit.maxMgPerKg !== null) mustBeWithin(`limits[${i}].maxMgPerKg`, limit.maxMgPerKg, { min: 0 })
  mustBeWithin(`limits[${i}].toleranceShare`, limit.toleranceShare, { min: 0, max: MOST_PRINTED_ROUNDING_SHARE })
  const missing: LimitFinding['missing'] = []
  const { massG, isWhole } = massInForm(q, limit.substances, limit.form)
  if (!isWhole) missing.push('form-conversion')
  let found = mgPerKgFlour(massG, q.flourMassG)
  if (limit.countsFlourContent) {
    for (const substance of limit.substances) {
      const content = q.flourContentMgPerKg[substance]
      if (content === undefined) missing.push('flour-content')
      else found += content
    }
  }
  if (limit.basis === 'finished-food') {
    if (q.finishedFoodPer100Flour === null) missing.push('finished-food-mass')
    else found = (found * 100) / q.finishedFoodPer100Flour
  }
  const isChecked = limit.checkedOn !== null
  const finding = (code: LimitFinding['code'], mgPerKg: number | null): LimitFinding => ({
    limitId: limit.id,
    code,
    mgPerKg,
    maxMgPerKg: limit.maxMgPerKg,
    missing: [...new Set(missing)],
  })
  const isPresent =
    massG > 0 || !isWhole || limit.substances.some((substance) => (q.flourContentMgPerKg[substance] ?? 0) > 0)
  if (!limit.isPermitted && isPresent) return finding(isChecked ? 'not-permitted' : 'not-permitted-unchecked', null)
  if (limit.isPermitted && limit.maxMgPerKg === null) {
    return finding(isChecked ? 'as-needed' : 'within-unchecked-limit', missing.length > 0 ? null : found)
  }
  const max = (limit.maxMgPerKg ?? 0) * (1 + limit.toleranceShare)
  const isComplete = missing.length === 0
  // What is known can already be too much; what is missing could only add to it, unless the basis itself is missing.
  const isOver = limit.isPermitted && found > max * (1 + 1e-12) && !missing.includes('finished-food-mass')
  if (isOver) return finding(isChecked ? 'over-checked-limit' : 'over-unchecked-limit', isComplete ? found : null)
  if (!isComplete) return finding('cannot-judge', null)
  return finding(isChecked ? 'within-checked-limit' : 'within-unchecked-limit', found)
}
