'use server'

import { act } from '@/app/act'
import { textOf } from '@/lib/ui/text-of'
import { numberOf } from '@/lib/ui/number-of'
import { settingsOf } from '@/lib/ui/settings-of'
import { looksOf } from './looks-of'
import { changeSettings as changeSettingsCommand } from '@/lib/kitchen/people/change-settings'
import type { FormState } from '@/lib/ui/form-state'

export async function changeSettings(
  seenRevision: number,
  locale: string,
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const input = {
    seenRevision,
    bakeryName: textOf(form, 'bakeryName'),
    worksAlone: form.has('worksAlone'),
    language: textOf(form, 'language') || null,
    costChangeLimitPct: numberOf(form, 'costChangeLimitPct', locale),
    dayTurnsAtH: Number(textOf(form, 'dayTurnsAtH')),
    stationIdleMin: numberOf(form, 'stationIdleMin', locale),
    pinLastsH: numberOf(form, 'pinLastsH', locale),
    ...looksOf(form, locale),
    ...settingsOf(form),
  }
  const acted = await act(changeSettingsCommand, input, form, former)
  return acted.ok ? acted.done() : acted.state
}
