import 'server-only'
import { Refusal } from '../refusal'
import { readEnteredValue } from './read-entered-value'
import { toBaseUnit } from './to-base-unit'

/** Units of quantities that are never below zero. */
const neverNegative: ReadonlySet<string> = new Set(['g', 'mL', 's', 'mL/g'])

/**
 * What was entered, in the measure's base unit.
 * Refuses at `value`: not-a-number, ambiguous-number, too-small; at `unit`: unit-not-of-measure.
 */
export function enteredValue(entered: { value: string; unit: string }, measure: { unit: string }): number {
  const read = readEnteredValue(entered.value)
  if ('fault' in read) throw Refusal.at('value', read.fault)
  const value = toBaseUnit({ number: read.number, unit: entered.unit, baseUnit: measure.unit })
  if (value === undefined) throw Refusal.at('unit', 'unit-not-of-measure', { unit: measure.unit })
  if (value < 0 && neverNegative.has(measure.unit)) throw Refusal.at('value', 'too-small', { min: 0 })
  return value
}
