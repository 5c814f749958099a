'use server'

import { act } from '@/app/act'
import { textOf } from '@/lib/ui/text-of'
import { closeTrial } from '@/lib/kitchen/results/close-trial'
import type { FormState } from '@/lib/ui/form-state'

export async function close(
  trialId: string,
  seenRevision: number,
  early: boolean,
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const acted = await act(closeTrial, { trialId, seenRevision, early, reason: textOf(form, 'reason') }, form, former)
  return acted.ok ? acted.done() : acted.state
}
