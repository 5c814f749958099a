'use server'

import { act } from '@/app/act'
import { textOf } from '@/lib/ui/text-of'
import { currentLanguage } from '@/app/language'
import { linkTo } from '@/lib/auth/link-to'
import { invitePerson } from '@/lib/kitchen/people/invite-person'
import { withdrawInvitation } from '@/lib/kitchen/people/withdraw-invitation'
import type { FormState } from '@/lib/ui/form-state'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'

export async function invite(former: FormState, form: FormData): Promise<FormState> {
  const input = { name: textOf(form, 'name'), email: textOf(form, 'email'), role: textOf(form, 'role') }
  const acted = await act(invitePerson, input, form, former)
  if (!acted.ok) return acted.state
  const language = await currentLanguage()
  const { team } = wordsIn(language).people
  const name = input.name.trim()
  return acted.done({
    link: linkTo(`/join/${acted.value.secret}`),
    label: say(team.link, language, { name }),
    caution: say(team.linkCaution, language, { name }),
  })
}

export async function withdraw(invitationId: string, former: FormState, form: FormData): Promise<FormState> {
  const acted = await act(withdrawInvitation, { invitationId }, form, former)
  return acted.ok ? acted.done() : acted.state
}
