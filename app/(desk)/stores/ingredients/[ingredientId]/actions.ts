'use server'

import { act } from '@/app/act'
import { textOf } from '@/lib/ui/text-of'
import { decimalTextOf } from '@/lib/ui/decimal-text-of'
import { massOf } from '@/lib/ui/mass-of'
import { enterPrice } from '@/lib/kitchen/stores/enter-price'
import type { FormState } from '@/lib/ui/form-state'
import type { MassUnit } from '@/lib/words/format/mass'

/** Locale and unit are bound by the page, so that a number means what stood beside its field. */
export async function enter(
  ingredientId: string,
  locale: string,
  unit: MassUnit,
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const input = {
    ingredientId,
    holdsFrom: textOf(form, 'holdsFrom') || undefined,
    packMassG: massOf(form, 'packMassG', locale, unit),
    packPrice: decimalTextOf(form, 'packPrice', locale),
    supplier: textOf(form, 'supplier'),
  }
  const acted = await act(enterPrice, input, form, former)
  return acted.ok ? acted.done() : acted.state
}
