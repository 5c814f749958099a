import { mustBeWithin, mustHaveAtLeast } from '../checks'
import { CalcError } from '../error'
import type { Formula } from './types'

/**
 * Demands a formula that can be worked on: at least one line, ids unique, each line in a known stage,
 * masses finite and not negative, and some flour.
 * @returns total flour over all stages, g, > 0
 * @throws CalcError 'empty' | 'duplicate' | 'not-possible' | 'not-finite' | 'out-of-range'
 */
export function mustBeFormula(formula: Formula): number {
  mustHaveAtLeast('lines', formula.lines, 1)
  const stageIds = new Set<string>()
  formula.stages.forEach((stage, i) => {
    if (stageIds.has(stage.id)) throw new CalcError('duplicate', { field: `stages[${i}].id`, value: stage.id })
    stageIds.add(stage.id)
  })
  const lineIds = new Set<string>()
  let flourMassG = 0
  formula.lines.forEach((line, i) => {
    if (lineIds.has(line.id)) throw new CalcError('duplicate', { field: `lines[${i}].id`, value: line.id })
    lineIds.add(line.id)
    if (!stageIds.has(line.stageId)) {
      throw new CalcError('not-possible', {
        field: `lines[${i}].stageId`,
        value: line.stageId,
        reason: 'unknown-stage',
      })
    }
    mustBeWithin(`lines[${i}].massG`, line.massG, { min: 0 })
    if (line.isFlour) flourMassG += line.massG
  })
  mustBeWithin('flourMassG', flourMassG, { over: 0 })
  return flourMassG
}
