'use server'

import { redirect } from 'next/navigation'
import { act } from '@/app/act'
import { textOf } from '@/lib/ui/text-of'
import { draftChange } from '@/lib/kitchen/decisions/draft-change'
import { keepFormula } from '@/lib/kitchen/decisions/keep-formula'
import type { FormState } from '@/lib/ui/form-state'

export async function change(
  trialId: string,
  seenRevision: number,
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const acted = await act(
    draftChange,
    { trialId, seenRevision, armId: textOf(form, 'armId') || undefined, reason: textOf(form, 'reason') },
    form,
    former,
  )
  if (!acted.ok) return acted.state
  redirect(`/decisions/${acted.value.decisionId}`)
}

export async function keep(
  trialId: string,
  seenRevision: number,
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const acted = await act(keepFormula, { trialId, seenRevision, reason: textOf(form, 'reason') }, form, former)
  if (!acted.ok) return acted.state
  redirect(`/decisions/${acted.value.decisionId}`)
}
