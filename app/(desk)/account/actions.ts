'use server'

import { act } from '@/app/act'
import { textOf } from '@/lib/ui/text-of'
import { changeOwnPassword } from '@/lib/kitchen/people/change-own-password'
import { chooseLanguage as chooseLanguageCommand } from '@/lib/kitchen/people/choose-language'
import { choosePin } from '@/lib/kitchen/people/choose-pin'
import { endOtherSessions } from '@/lib/kitchen/people/end-other-sessions'
import type { FormState } from '@/lib/ui/form-state'

export async function changePassword(former: FormState, form: FormData): Promise<FormState> {
  const acted = await act(changeOwnPassword, { newPassword: textOf(form, 'newPassword') }, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function keepPin(former: FormState, form: FormData): Promise<FormState> {
  const acted = await act(choosePin, { pin: textOf(form, 'pin') }, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function chooseLanguage(former: FormState, form: FormData): Promise<FormState> {
  const acted = await act(chooseLanguageCommand, { language: textOf(form, 'language') || null }, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function endOthers(former: FormState, form: FormData): Promise<FormState> {
  const acted = await act(endOtherSessions, {}, form, former)
  return acted.ok ? acted.done() : acted.state
}
