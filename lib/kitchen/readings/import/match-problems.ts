import 'server-only'
import type { Problem } from '../../refusal'
import type { ColumnUse, ImportMatch } from './import-readings.input'
import type { ImportFacts } from './load-import-facts'
import { columnOf } from './row-place'

/**
 * What is wrong with the way in which a file is to be read, before any row is: a column used twice, nothing that says
 * the dough, nothing that is a reading, or a piece that could be any; and a column that says which dough is which, from
 * whoever has not opened the key: its faults, and where its values then stand, would tell it. Empty when it can be read.
 */
export function matchProblems(
  match: ImportMatch,
  width: number,
  day: string | null,
  { trial, batches, measures, knowsKey }: ImportFacts,
): Problem[] {
  const problems: Problem[] = []
  const fault = (path: string, code: Problem['code'], facts: Problem['facts'] = {}) =>
    problems.push({ path, code, facts })
  const has = (as: ColumnUse['as']) => columnOf(match, as) >= 0
  if (match.columns.length !== width) fault('columns', 'columns-moved-on')
  match.columns.forEach((column, at) => {
    if (column.as !== 'nothing' && column.as !== 'measure' && columnOf(match, column.as) !== at)
      fault(`columns.${at}`, 'column-twice')
    if (column.as !== 'measure') return
    const measure = measures.find(({ id }) => id === column.measureId)
    if (!measure) fault(`columns.${at}`, 'wrong-choice')
    else if (measure.derivation !== null) fault(`columns.${at}`, 'measure-worked-out')
    else if (!measure.units.includes(column.unit)) fault(`columns.${at}`, 'unit-not-of-measure', { unit: measure.unit })
  })
  if (!has('code') && !(has('day') && has('arm'))) fault('columns', 'column-for-dough')
  else if (!has('code') && !has('dough') && batches.some(({ number }) => number > 1))
    fault('columns', 'column-for-which-dough')
  if (has('arm') && !knowsKey) fault(`columns.${columnOf(match, 'arm')}`, 'column-tells-key')
  if (!has('measure')) fault('columns', 'column-for-reading')
  if (has('level') && trial.factorName === null) fault(`columns.${columnOf(match, 'level')}`, 'no-factor')
  if (trial.factorName !== null && !has('level') && !has('piece'))
    fault('columns', 'column-for-level', { factor: trial.factorName })
  if (!has('time') && day === null) fault('day', 'missing')
  for (const { arm, text } of match.arms)
    if (!trial.arms.some(({ position }) => position === arm)) fault(`arms.${text}`, 'wrong-choice')
  return problems
}
