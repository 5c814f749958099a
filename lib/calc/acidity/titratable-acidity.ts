import { mustBeWithin } from '../checks'

/** Molar mass of lactic acid, one acid group a molecule, g/mol. From memory. */
const LACTIC_ACID_G_PER_MOL = 90.08

/**
 * Titratable acidity of dough, sour or bread: mL of 0.1 mol/L sodium hydroxide for 10 g, and all of it as lactic acid.
 * Bread and sour hold other acids too: 'as lactic acid' is a way of stating it, not a finding.
 * @param sampleMassG g, > 0; @param alkaliMl used to the end point, mL, ≥ 0; @param alkaliMolPerL over 0 to 20
 * @throws CalcError 'not-finite' | 'out-of-range'; the same when it comes to more than the sample, 100 %
 * Source: definition; common practice, no source. The end point (pH 8.5 in most laboratories) belongs to the method.
 * @example 10 g, 12.5 mL of 0.1 mol/L: 12.5, and 1.126 % as lactic acid
 */
export function titratableAcidity(q: { sampleMassG: number; alkaliMl: number; alkaliMolPerL: number }): {
  acidityMlPer10g: number
  lacticAcidPct: number
} {
  mustBeWithin('sampleMassG', q.sampleMassG, { over: 0 })
  mustBeWithin('alkaliMolPerL', q.alkaliMolPerL, { over: 0, max: 20 })
  mustBeWithin('alkaliMl', q.alkaliMl, { min: 0 })
  const mmol = q.alkaliMl * q.alkaliMolPerL
  const lacticAcidPct = mustBeWithin('alkaliMl', (mmol * LACTIC_ACID_G_PER_MOL) / 10 / q.sampleMassG, { max: 100 })
  return { acidityMlPer10g: ((mmol / 0.1) * 10) / q.sampleMassG, lacticAcidPct }
}
