'use server'

import { act } from '@/app/act'
import { changeEquipment } from '@/lib/kitchen/stores/change-equipment'
import type { EquipmentKind } from '@/lib/kitchen/stores/equipment-facts.input'
import type { FormState } from '@/lib/ui/form-state'
import type { OwnUnits } from '@/lib/words/format/own-units'
import { readEquipmentForm } from '../read-equipment-form'

type Seen = { equipmentId: string; seenRevision: number; kind: EquipmentKind }

export async function change(
  { kind, ...seen }: Seen,
  units: OwnUnits,
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const input = { ...seen, inUse: form.has('inUse'), ...readEquipmentForm(form, kind, units) }
  const acted = await act(changeEquipment, input, form, former)
  return acted.ok ? acted.done() : acted.state
}
