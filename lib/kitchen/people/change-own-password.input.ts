import { z } from 'zod'
import { chosenPassword } from '../text.input'

export const changeOwnPasswordInput = z.strictObject({ newPassword: chosenPassword })
