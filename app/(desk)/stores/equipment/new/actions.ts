'use server'

import { redirect } from 'next/navigation'
import { act } from '@/app/act'
import { addEquipment } from '@/lib/kitchen/stores/add-equipment'
import type { EquipmentKind } from '@/lib/kitchen/stores/equipment-facts.input'
import type { FormState } from '@/lib/ui/form-state'
import type { OwnUnits } from '@/lib/words/format/own-units'
import { readEquipmentForm } from '../read-equipment-form'

export async function add(kind: EquipmentKind, units: OwnUnits, former: FormState, form: FormData): Promise<FormState> {
  const acted = await act(addEquipment, readEquipmentForm(form, kind, units), form, former)
  return acted.ok ? redirect('/stores/equipment') : acted.state
}
