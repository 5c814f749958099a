import { mustBeWithin, mustHaveAtLeast, mustOrder } from '../checks'
import { CalcError } from '../error'
import type { Design, DesignColumn, MixedModel, MixedRow } from './types'

/** More columns than any trial has; the cost of a fit grows with their square. */
const MOST_COLUMNS = 100

/**
 * Columns of the fixed part in treatment coding: the intercept is the control at the first level of each factor, in
 * the order stated, or else as they come in the rows; covariates are about their means. Names of the model are checked against the rows.
 * @param rows one per reading, at least one; @param model see MixedModel
 * @throws CalcError 'not-finite' | 'empty' | 'duplicate'; 'wrong-shape' with reason 'missing-level', 'missing-value',
 * 'unknown-arm', 'unknown-level', 'level-not-ordered' or 'not-a-fixed-factor'; 'out-of-range' (random names, columns); 'not-possible' with 'one-level'
 * @example designMatrix({ rows: [{ arm: 'a', factors: {}, y: 1 }], model: { arms: ['a'], random: ['batch'] } }).x // [[1]]
 */
export function designMatrix(q: { rows: readonly MixedRow[]; model: MixedModel }): Design {
  const { arms, fixed = [], covariates = [], byArm, levelOrder = {}, random } = q.model
  mustHaveAtLeast('rows', q.rows, 1)
  mustHaveAtLeast('arms', arms, 1)
  mustBeWithin('random.length', random.length, { min: 1, max: 2 })
  mustDiffer('arms', arms)
  mustDiffer('names', ['arm', ...fixed, ...covariates, ...random])
  if (byArm !== undefined && !fixed.includes(byArm)) {
    throw new CalcError('wrong-shape', { field: 'byArm', value: byArm, reason: 'not-a-fixed-factor' })
  }
  const levels: Record<string, readonly string[]> = { arm: arms }
  for (const name of [...fixed, ...random]) levels[name] = levelsOf(q.rows, name)
  for (const name of fixed)
    if (Object.hasOwn(levelOrder, name))
      levels[name] = mustOrder(`levelOrder.${name}`, levelOrder[name]!, levels[name]!)
  mustNameArms(q.rows, arms)
  for (const name of fixed) {
    if (levels[name]!.length < 2)
      throw new CalcError('not-possible', { field: `fixed.${name}`, value: levels[name]![0]!, reason: 'one-level' })
  }
  const values = Object.fromEntries(covariates.map((name) => [name, centred(q.rows, name)]))

  const factor = (term: string): DesignColumn[] => levels[term]!.slice(1).map((level) => ({ term, level, arm: null }))
  const columns: DesignColumn[] = [
    { term: 'intercept', level: null, arm: null },
    ...fixed.flatMap(factor),
    ...covariates.map((term) => ({ term, level: null, arm: null })),
    ...factor('arm'),
    ...(byArm === undefined
      ? []
      : arms
          .slice(1)
          .flatMap((arm) => levels[byArm]!.slice(1).map((level) => ({ term: `arm-by-${byArm}`, level, arm })))),
  ]
  mustBeWithin('fixed.length', columns.length, { max: MOST_COLUMNS })
  const x = q.rows.map((row, i) =>
    columns.map(({ term, level, arm }) => {
      if (term === 'intercept') return 1
      if (level === null) return values[term]!.about[i]!
      if (term === 'arm') return row.arm === level ? 1 : 0
      return row.factors[arm === null ? term : byArm!] === level && (arm === null || row.arm === arm) ? 1 : 0
    }),
  )
  const covariateMeans = Object.fromEntries(covariates.map((name) => [name, values[name]!.mean]))
  return { x, columns, levels, covariateMeans }
}

function mustDiffer(field: string, names: readonly string[]): void {
  const twice = names.find((name, i) => names.indexOf(name) < i)
  if (twice !== undefined) throw new CalcError('duplicate', { field, value: twice })
}

function mustNameArms(rows: readonly MixedRow[], arms: readonly string[]): void {
  const [known, seen] = [new Set(arms), new Set(rows.map((row) => row.arm))]
  for (const arm of known)
    if (!seen.has(arm)) throw new CalcError('empty', { field: 'rows', value: arm, reason: 'arm-without-rows' })
  for (const arm of seen)
    if (!known.has(arm)) throw new CalcError('wrong-shape', { field: 'rows', value: arm, reason: 'unknown-arm' })
}

function levelsOf(rows: readonly MixedRow[], name: string): string[] {
  const levels = new Set<string>()
  rows.forEach((row, i) => {
    const level = Object.hasOwn(row.factors, name) ? row.factors[name] : undefined
    if (level === undefined)
      throw new CalcError('wrong-shape', { field: `rows[${i}].factors.${name}`, reason: 'missing-level' })
    levels.add(level)
  })
  return [...levels]
}

function centred(rows: readonly MixedRow[], name: string): { mean: number; about: number[] } {
  const values = rows.map((row, i) => {
    const own = row.covariates !== undefined && Object.hasOwn(row.covariates, name) ? row.covariates[name] : undefined
    const field = `rows[${i}].covariates.${name}`
    if (own === undefined) throw new CalcError('wrong-shape', { field, reason: 'missing-value' })
    return mustBeWithin(field, own)
  })
  const rough = values.reduce((sum, value) => sum + value / values.length, 0)
  const mean = rough + values.reduce((sum, value) => sum + (value - rough) / values.length, 0)
  return { mean, about: values.map((value) => value - mean) }
}
