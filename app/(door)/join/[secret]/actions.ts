'use server'

import { redirect } from 'next/navigation'
import { act } from '@/app/act'
import { textOf } from '@/lib/ui/text-of'
import { keepSession } from '@/app/keep-session'
import { acceptInvitation } from '@/lib/kitchen/people/accept-invitation'
import type { FormState } from '@/lib/ui/form-state'

export async function join(secret: string, former: FormState, form: FormData): Promise<FormState> {
  const acted = await act(acceptInvitation, { secret, password: textOf(form, 'password') }, form, former)
  if (!acted.ok) return acted.state
  await keepSession(acted.value.sessionSecret)
  redirect('/')
}
