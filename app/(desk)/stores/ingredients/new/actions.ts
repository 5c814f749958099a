'use server'

import { redirect } from 'next/navigation'
import { act } from '@/app/act'
import { addIngredient } from '@/lib/kitchen/stores/add-ingredient'
import type { FormState } from '@/lib/ui/form-state'
import { placeSourceFault } from '../place-source-fault'
import { readIngredientForm } from '../read-ingredient-form'

export async function add(locale: string, former: FormState, form: FormData): Promise<FormState> {
  const acted = await act(addIngredient, readIngredientForm(form, locale), form, former)
  return acted.ok ? redirect(`/stores/ingredients/${acted.value.ingredientId}`) : placeSourceFault(acted.state)
}
