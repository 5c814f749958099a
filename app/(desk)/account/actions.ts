'use server'

import { act } from '@/app/act'
import { shownBadge } from '@/app/shown-badge'
import { textOf } from '@/lib/ui/text-of'
import { changeOwnPassword } from '@/lib/kitchen/people/change-own-password'
import { chooseLanguage as chooseLanguageCommand } from '@/lib/kitchen/people/choose-language'
import { choosePin } from '@/lib/kitchen/people/choose-pin'
import { endOtherSessions } from '@/lib/kitchen/people/end-other-sessions'
import { makeOwnBadge } from '@/lib/kitchen/people/make-own-badge'
import { withdrawOwnBadge } from '@/lib/kitchen/people/withdraw-own-badge'
import type { FormState } from '@/lib/ui/form-state'

export async function changePassword(former: FormState, form: FormData): Promise<FormState> {
  const acted = await act(changeOwnPassword, { newPassword: textOf(form, 'newPassword') }, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function keepPin(former: FormState, form: FormData): Promise<FormState> {
  const acted = await act(choosePin, { pin: textOf(form, 'pin') }, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function makeBadge(former: FormState, form: FormData): Promise<FormState> {
  const acted = await act(makeOwnBadge, {}, form, former)
  return acted.ok ? acted.done(shownBadge(acted.value)) : acted.state
}

export async function withdrawBadge(former: FormState, form: FormData): Promise<FormState> {
  const acted = await act(withdrawOwnBadge, {}, form, former)
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
