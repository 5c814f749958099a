import { z } from 'zod'
import { typedPassword } from '../text.input'

export const changeOwnPasswordInput = z.strictObject({ newPassword: typedPassword.min(15) })
