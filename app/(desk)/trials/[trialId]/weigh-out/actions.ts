'use server'

import { act } from '@/app/act'
import { openKey } from '@/lib/kitchen/trials/open-key'
import type { FormState } from '@/lib/ui/form-state'

export async function open(
  seen: { trialId: string; planHash: string },
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const acted = await act(openKey, seen, form, former)
  return acted.ok ? acted.done() : acted.state
}
