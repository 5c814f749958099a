import { mustBeWithin } from '../checks'

/** Molar mass of lactic acid, one acid group a molecule, g/mol. From memory. */
const LACTIC_ACID_G_PER_MOL = 90.08

/** What dough, sour and bread are titrated to in most laboratories. */
const USUAL_END_POINT_PH = 8.5

export const ACIDITY_WARNINGS = ['same-end-point-only', 'not-the-usual-end-point'] as const
export type AcidityWarning = (typeof ACIDITY_WARNINGS)[number]

/**
 * Titratable acidity of dough, sour or bread: mL of 0.1 mol/L sodium hydroxide for 10 g, and all of it as lactic acid.
 * Bread and sour hold other acids too: 'as lactic acid' is a way of stating it, not a finding. Acidities that were titrated
 * to different pH do not compare, so the pH is asked for and stays with the answer.
 * @param sampleMassG g, > 0; @param alkaliMl used to the end point, mL, ≥ 0; @param alkaliMolPerL over 0 to 20
 * @param endPointPh pH at which the titration was ended, 6 to 10
 * @throws CalcError 'not-finite' | 'out-of-range'; the same when it comes to more than the sample, 100 %
 * Source: mL of 0.1 mol/L for 10 g to pH 8.5: an ingredient company's technical compendium, rye sours, and a titrator maker's
 *   note on white bread. US bakers' pages end at 6.6; wine is ended at 7.0 (OIV) or 8.2 (AOAC, as an instrument maker
 *   tells it). The range of 6 to 10 is common practice, no source.
 * @example 10 g, 12.5 mL of 0.1 mol/L to pH 8.5: 12.5, and 1.126 % as lactic acid
 */
export function titratableAcidity(q: {
  sampleMassG: number
  alkaliMl: number
  alkaliMolPerL: number
  endPointPh: number
}): {
  acidityMlPer10g: number
  lacticAcidPct: number
  endPointPh: number
  warnings: AcidityWarning[]
} {
  mustBeWithin('sampleMassG', q.sampleMassG, { over: 0 })
  mustBeWithin('alkaliMolPerL', q.alkaliMolPerL, { over: 0, max: 20 })
  mustBeWithin('alkaliMl', q.alkaliMl, { min: 0 })
  const endPointPh = mustBeWithin('endPointPh', q.endPointPh, { min: 6, max: 10 })
  const mmol = q.alkaliMl * q.alkaliMolPerL
  const lacticAcidPct = mustBeWithin('alkaliMl', (mmol * LACTIC_ACID_G_PER_MOL) / 10 / q.sampleMassG, { max: 100 })
  const warnings: AcidityWarning[] = ['same-end-point-only']
  if (endPointPh !== USUAL_END_POINT_PH) warnings.push('not-the-usual-end-point')
  return { acidityMlPer10g: ((mmol / 0.1) * 10) / q.sampleMassG, lacticAcidPct, endPointPh, warnings }
}
