'use server'

import { act } from '@/app/act'
import { currentLanguage } from '@/app/language'
import { makeStation } from '@/lib/kitchen/stations/make-station'
import { noteTold } from '@/lib/kitchen/stations/note-told'
import { withdrawStation } from '@/lib/kitchen/stations/withdraw-station'
import type { FormState } from '@/lib/ui/form-state'
import { textOf } from '@/lib/ui/text-of'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'

export async function make(former: FormState, form: FormData): Promise<FormState> {
  const input = { name: textOf(form, 'name') }
  const acted = await act(makeStation, input, form, former)
  if (!acted.ok) return acted.state
  const language = await currentLanguage()
  const { tablets: text } = wordsIn(language).stations
  return acted.done({
    link: acted.value.code,
    label: say(text.code, language, { name: input.name.trim() }),
    caution: text.codeCaution,
  })
}

export async function withdraw(stationId: string, former: FormState, form: FormData): Promise<FormState> {
  const acted = await act(withdrawStation, { stationId }, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function told(stationId: string, former: FormState, form: FormData): Promise<FormState> {
  const acted = await act(noteTold, { stationId }, form, former)
  return acted.ok ? acted.done() : acted.state
}
