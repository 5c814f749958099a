'use server'

import { redirect } from 'next/navigation'
import { act } from '@/app/act'
import { textOf } from '@/lib/ui/text-of'
import { discardDraft } from '@/lib/kitchen/formulas/discard-draft'
import { draftVersion } from '@/lib/kitchen/formulas/draft-version'
import { signOffVersion } from '@/lib/kitchen/formulas/sign-off-version'
import { momentOf } from '@/lib/kitchen/moment-of'
import type { FormState } from '@/lib/ui/form-state'

type Seen = { versionId: string; seenRevision: number; seenHash: string; timeZone: string }

export async function signOff({ timeZone, ...seen }: Seen, former: FormState, form: FormData): Promise<FormState> {
  const effectiveAt =
    textOf(form, 'when') === 'later' ? momentOf(textOf(form, 'effectiveAt'), textOf(form, 'time'), timeZone) : null
  const acted = await act(signOffVersion, { ...seen, effectiveAt }, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function draftFrom(fromVersionId: string, former: FormState, form: FormData): Promise<FormState> {
  const acted = await act(draftVersion, { fromVersionId, reason: textOf(form, 'reason') }, form, former)
  if (!acted.ok) return acted.state
  redirect(`/formulas/${acted.value.formulaId}/versions/${acted.value.versionId}/edit`)
}

export async function discard(
  versionId: string,
  seenRevision: number,
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const acted = await act(discardDraft, { versionId, seenRevision }, form, former)
  return acted.ok ? acted.done() : acted.state
}
