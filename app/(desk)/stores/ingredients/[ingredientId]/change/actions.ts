'use server'

import { redirect } from 'next/navigation'
import { act } from '@/app/act'
import { changeIngredient } from '@/lib/kitchen/stores/change-ingredient'
import type { FormState } from '@/lib/ui/form-state'
import { placeSourceFault } from '../../place-source-fault'
import { readIngredientForm } from '../../read-ingredient-form'

export async function change(
  ingredientId: string,
  seenRevision: number,
  locale: string,
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const input = { ingredientId, seenRevision, inUse: form.has('inUse'), ...readIngredientForm(form, locale) }
  const acted = await act(changeIngredient, input, form, former)
  return acted.ok ? redirect(`/stores/ingredients/${ingredientId}`) : placeSourceFault(acted.state)
}
