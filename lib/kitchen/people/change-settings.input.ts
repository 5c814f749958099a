import { z } from 'zod'
import { line, seenRevision } from '../text.input'
import { bakerySettings } from './bakery-settings.input'
import { chosenLanguage } from './chosen-language.input'

/** From which change of ingredient cost per loaf, % either way, the owner signs as well. */
const costChangeLimitPct = z.number().min(0).max(100)

export const changeSettingsInput = z.strictObject({
  seenRevision,
  bakeryName: line(120),
  worksAlone: z.boolean(),
  costChangeLimitPct,
  language: chosenLanguage,
  ...bakerySettings.shape,
})
