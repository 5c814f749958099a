'use server'

import { act } from '@/app/act'
import { shownBadge } from '@/app/shown-badge'
import { textOf } from '@/lib/ui/text-of'
import { currentLanguage } from '@/app/language'
import { linkTo } from '@/lib/auth/link-to'
import { changePerson } from '@/lib/kitchen/people/change-person'
import { makeBadge as makeBadgeCommand } from '@/lib/kitchen/people/make-badge'
import { startPasswordReset } from '@/lib/kitchen/people/start-password-reset'
import { takePinAway } from '@/lib/kitchen/people/take-pin-away'
import { withdrawBadge as withdrawBadgeCommand } from '@/lib/kitchen/people/withdraw-badge'
import type { FormState } from '@/lib/ui/form-state'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'

export async function change(
  personId: string,
  seenRevision: number,
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const input = {
    personId,
    seenRevision,
    name: textOf(form, 'name'),
    role: textOf(form, 'role'),
    works: form.has('works'),
  }
  const acted = await act(changePerson, input, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function makeResetLink(
  personId: string,
  name: string,
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const acted = await act(startPasswordReset, { personId }, form, former)
  if (!acted.ok) return acted.state
  const language = await currentLanguage()
  const { team } = wordsIn(language).people
  return acted.done({
    link: linkTo(`/join/${acted.value.secret}`),
    label: say(team.link, language, { name }),
    caution: say(team.linkCaution, language, { name }),
  })
}

export async function takeAway(personId: string, former: FormState, form: FormData): Promise<FormState> {
  const acted = await act(takePinAway, { personId }, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function makeBadge(personId: string, former: FormState, form: FormData): Promise<FormState> {
  const acted = await act(makeBadgeCommand, { personId }, form, former)
  return acted.ok ? acted.done(shownBadge(acted.value)) : acted.state
}

export async function withdrawBadge(personId: string, former: FormState, form: FormData): Promise<FormState> {
  const acted = await act(withdrawBadgeCommand, { personId }, form, former)
  return acted.ok ? acted.done() : acted.state
}
