import { z } from 'zod'
import { chosenLanguage } from './chosen-language.input'

export const chooseLanguageInput = z.strictObject({ language: chosenLanguage })
