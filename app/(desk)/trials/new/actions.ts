'use server'

import { redirect } from 'next/navigation'
import { act } from '@/app/act'
import { draftTrial } from '@/lib/kitchen/trials/draft-trial'
import type { FormState } from '@/lib/ui/form-state'
import type { OwnUnits } from '@/lib/words/format/own-units'
import { readTrialForm } from '../read-trial-form'

export async function draft(units: OwnUnits, former: FormState, form: FormData): Promise<FormState> {
  const acted = await act(draftTrial, { content: readTrialForm(form, units) }, form, former)
  return acted.ok ? redirect(`/trials/${acted.value.trialId}`) : acted.state
}
