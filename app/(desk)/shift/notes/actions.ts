'use server'

import { act } from '@/app/act'
import { keepNote } from '@/lib/kitchen/notes/keep-note'
import { noteRead } from '@/lib/kitchen/notes/note-read'
import type { FormState } from '@/lib/ui/form-state'
import { textOf } from '@/lib/ui/text-of'

export async function keep(batchId: string | null, former: FormState, form: FormData): Promise<FormState> {
  const input = { batchId, text: textOf(form, 'text'), forNext: form.has('forNext') }
  const acted = await act(keepNote, input, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function read(noteId: string, former: FormState, form: FormData): Promise<FormState> {
  const acted = await act(noteRead, { noteId }, form, former)
  return acted.ok ? acted.done() : acted.state
}
