import { massFromUnit, type MassUnit } from '../words/format/mass'
import { numberOf } from './number-of'

/** A mass typed in a form in one of the bakery's units, in grams; as `numberOf` when it is empty or no number. */
export function massOf(form: FormData, name: string, locale: string, unit: MassUnit): number | string | undefined {
  const typed = numberOf(form, name, locale)
  return typeof typed === 'number' ? massFromUnit(typed, unit) : typed
}
