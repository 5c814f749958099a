'use server'

import { act } from '@/app/act'
import { keepCheck } from '@/lib/kitchen/checks/keep-check'
import type { FormState } from '@/lib/ui/form-state'
import { textOf } from '@/lib/ui/text-of'

export async function keep(equipmentId: string, unit: string, former: FormState, form: FormData): Promise<FormState> {
  const known = ['mass', 'block'].map((name) => [name, textOf(form, name).trim()] as const)
  const input = {
    equipmentId,
    unit,
    shown: textOf(form, 'shown'),
    ...Object.fromEntries(known.filter(([, typed]) => typed !== '')),
  }
  const acted = await act(keepCheck, input, form, former)
  return acted.ok ? acted.done() : acted.state
}
