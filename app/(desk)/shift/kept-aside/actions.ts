'use server'

import { act } from '@/app/act'
import { settleEntry } from '@/lib/kitchen/readings/settle-entry'
import type { FormState } from '@/lib/ui/form-state'
import { textOf } from '@/lib/ui/text-of'

const choices = new Map([
  ['yes', true],
  ['no', false],
])

export async function settle(
  entryId: string,
  hash: string,
  seenReadingId: string | null,
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const take = choices.get(textOf(form, 'take'))
  const acted = await act(
    settleEntry,
    { entryId, hash, seenReadingId, take, reason: textOf(form, 'reason') },
    form,
    former,
  )
  return acted.ok ? acted.done() : acted.state
}
