import { noLooks } from '@/lib/kitchen/steps/looks.input'
import { numberOf } from '@/lib/ui/number-of'

/** When somebody is called to look at a dough, as it was typed; what was left empty is null. */
export function looksOf(form: FormData, locale: string) {
  return Object.fromEntries(Object.keys(noLooks).map((name) => [name, numberOf(form, name, locale) ?? null]))
}
