'use server'

import { act } from '@/app/act'
import { momentOf } from '@/lib/kitchen/moment-of'
import { keyInSheet } from '@/lib/kitchen/readings/paper/key-in-sheet'
import type { FormState } from '@/lib/ui/form-state'
import { textOf } from '@/lib/ui/text-of'

type SheetPlace = { measureId: string; piece: number | null; factorLevel: string | null; repeat: number; unit: string }

export async function keyIn(
  batchId: string,
  timeZone: string,
  places: readonly SheetPlace[],
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const lines = places.map((place, at) => {
    const value = textOf(form, `lines.${at}.value`).trim()
    return { ...place, value: value === '' ? null : value }
  })
  const input = {
    batchId,
    // Nobody chosen is nothing said, and not a name in a wrong form.
    writtenById: textOf(form, 'writtenById') || undefined,
    writtenAt: momentOf(textOf(form, 'writtenAt'), textOf(form, 'time'), timeZone),
    lines,
    confirmed: form.has('confirmed'),
  }
  const acted = await act(keyInSheet, input, form, former)
  return acted.ok ? acted.done() : acted.state
}
