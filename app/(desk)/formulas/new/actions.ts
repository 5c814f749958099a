'use server'

import { redirect } from 'next/navigation'
import { act } from '@/app/act'
import { textOf } from '@/lib/ui/text-of'
import { draftFormula } from '@/lib/kitchen/formulas/draft-formula'
import type { FormState } from '@/lib/ui/form-state'
import type { OwnUnits } from '@/lib/words/format/own-units'
import { atRows, readEditorForm } from '../read-editor-form'

export async function draft(units: OwnUnits, former: FormState, form: FormData): Promise<FormState> {
  const { sent, content } = readEditorForm(form, units)
  const acted = await act(draftFormula, { name: textOf(form, 'name'), ...content }, form, former)
  if (!acted.ok) return atRows(acted.state, sent)
  redirect(`/formulas/${acted.value.formulaId}/versions/${acted.value.versionId}`)
}
