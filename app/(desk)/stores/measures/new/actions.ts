'use server'

import { redirect } from 'next/navigation'
import { act } from '@/app/act'
import { textOf } from '@/lib/ui/text-of'
import { numberOf } from '@/lib/ui/number-of'
import { addMeasure } from '@/lib/kitchen/stores/add-measure'
import type { FormState } from '@/lib/ui/form-state'

export async function add(locale: string, former: FormState, form: FormData): Promise<FormState> {
  const number = (name: string) => numberOf(form, name, locale)
  const input = {
    name: textOf(form, 'name'),
    unit: textOf(form, 'unit'),
    digits: number('digits'),
    level: textOf(form, 'level') || undefined,
    direction: textOf(form, 'direction') || undefined,
    plausibleLeast: number('plausibleLeast'),
    plausibleMost: number('plausibleMost'),
    repeats: number('repeats'),
    repeatLimit: number('repeatLimit') ?? null,
    method: textOf(form, 'method'),
    ageLeastH: number('ageLeastH') ?? null,
    ageMostH: number('ageMostH') ?? null,
  }
  const acted = await act(addMeasure, input, form, former)
  return acted.ok ? redirect('/stores/measures') : acted.state
}
