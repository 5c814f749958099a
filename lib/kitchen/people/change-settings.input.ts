import { z } from 'zod'
import { line, seenRevision } from '../text.input'
import { looksFields, oddWait } from '../steps/looks.input'
import { bakerySettings } from './bakery-settings.input'
import { chosenLanguage } from './chosen-language.input'

/** From which change of ingredient cost per loaf, % either way, the owner signs as well. */
const costChangeLimitPct = z.number().min(0).max(100)

/** From which hour on work is of the next day: at night or in the morning, so that a night's shift is one day's work. */
export const dayTurnsAtH = z.int().min(0).max(11)

export const changeSettingsInput = z
  .strictObject({
    seenRevision,
    bakeryName: line(120),
    worksAlone: z.boolean(),
    costChangeLimitPct,
    dayTurnsAtH,
    ...looksFields,
    language: chosenLanguage,
    ...bakerySettings.shape,
  })
  .superRefine((settings, context) => {
    const odd = oddWait(settings)
    if (odd) context.addIssue({ code: 'custom', path: [odd.field], params: { code: odd.code } })
  })
