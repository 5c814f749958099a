'use server'

import { act, textOf } from '@/app/act'
import { changeSettings as changeSettingsCommand } from '@/lib/kitchen/people/change-settings'
import type { FormState } from '@/lib/ui/form-state'

export async function changeSettings(seenRevision: number, former: FormState, form: FormData): Promise<FormState> {
  const input = {
    seenRevision,
    bakeryName: textOf(form, 'bakeryName'),
    worksAlone: form.has('worksAlone'),
    timeZone: textOf(form, 'timeZone'),
    locale: textOf(form, 'locale'),
    currency: textOf(form, 'currency'),
    region: textOf(form, 'region'),
    massUnits: textOf(form, 'massUnits'),
    temperatureUnits: textOf(form, 'temperatureUnits'),
  }
  const acted = await act(changeSettingsCommand, input, form, former)
  return acted.ok ? acted.done() : acted.state
}
