import { z } from 'zod'
import { line, seenRevision } from '../text.input'
import { oddWait } from '../steps/looks.input'
import { looksFields } from '../steps/looks-fields.input'
import { bakerySettings } from './bakery-settings.input'
import { chosenLanguage } from './chosen-language.input'

/** From which change of ingredient cost per loaf, % either way, the owner signs as well. */
const costChangeLimitPct = z.number().min(0).max(100)

/** From which hour on work is of the next day: at night or in the morning, so that a night's shift is one day's work. */
export const dayTurnsAtH = z.int().min(0).max(11)

/** After how many minutes without a touch nobody is on a tablet any more. The last minute warns, so it is two at least. */
export const stationIdleMin = z.int().min(2).max(60)

/** After how many hours a tablet asks the PIN again: within one long shift, so that nobody is let in by yesterday's. */
export const pinLastsH = z.int().min(1).max(12)

export const changeSettingsInput = z
  .strictObject({
    seenRevision,
    bakeryName: line(120),
    worksAlone: z.boolean(),
    costChangeLimitPct,
    dayTurnsAtH,
    stationIdleMin,
    pinLastsH,
    ...looksFields,
    language: chosenLanguage,
    ...bakerySettings.shape,
  })
  .superRefine((settings, context) => {
    const odd = oddWait(settings)
    if (odd) context.addIssue({ code: 'custom', path: [odd.field], params: { code: odd.code } })
  })
