import { z } from 'zod'
import { line, seenRevision } from '../text.input'
import { bakerySettings } from './bakery-settings.input'

export const changeSettingsInput = z.strictObject({ seenRevision, bakeryName: line(120), worksAlone: z.boolean(), ...bakerySettings.shape })
