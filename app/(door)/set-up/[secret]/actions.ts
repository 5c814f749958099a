'use server'

import { redirect } from 'next/navigation'
import { act } from '@/app/act'
import { textOf } from '@/lib/ui/text-of'
import { keepSession } from '@/app/keep-session'
import { settingsOf } from '@/lib/ui/settings-of'
import { setUpBakery } from '@/lib/kitchen/people/set-up-bakery'
import type { FormState } from '@/lib/ui/form-state'

export async function setUp(secret: string, former: FormState, form: FormData): Promise<FormState> {
  const input = {
    secret,
    name: textOf(form, 'name'),
    email: textOf(form, 'email'),
    password: textOf(form, 'password'),
    bakeryName: textOf(form, 'bakeryName'),
    ...settingsOf(form),
  }
  const acted = await act(setUpBakery, input, form, former)
  if (!acted.ok) return acted.state
  await keepSession(acted.value.sessionSecret)
  redirect('/')
}
