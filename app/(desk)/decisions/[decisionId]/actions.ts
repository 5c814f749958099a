'use server'

import { act } from '@/app/act'
import { textOf } from '@/lib/ui/text-of'
import { takeBack } from '@/lib/kitchen/decisions/take-back'
import type { FormState } from '@/lib/ui/form-state'

export async function takeItBack(
  decisionId: string,
  seenRevision: number,
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const acted = await act(takeBack, { decisionId, seenRevision, reason: textOf(form, 'reason') }, form, former)
  return acted.ok ? acted.done() : acted.state
}
