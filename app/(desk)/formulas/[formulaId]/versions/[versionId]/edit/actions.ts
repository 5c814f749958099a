'use server'

import { redirect } from 'next/navigation'
import { act } from '@/app/act'
import { changeDraft } from '@/lib/kitchen/formulas/change-draft'
import type { FormState } from '@/lib/ui/form-state'
import type { OwnUnits } from '@/lib/words/format/own-units'
import { atRows, readEditorForm } from '../../../../read-editor-form'

export async function change(
  seen: { versionId: string; seenRevision: number; units: OwnUnits },
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const { versionId, seenRevision, units } = seen
  const { sent, content } = readEditorForm(form, units)
  const acted = await act(changeDraft, { versionId, seenRevision, ...content }, form, former)
  if (!acted.ok) return atRows(acted.state, sent)
  redirect(`/formulas/${acted.value.formulaId}/versions/${versionId}`)
}
