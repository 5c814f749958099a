import { z } from 'zod'
import { emailAddress, typedPassword } from '../text.input'

export const signInInput = z.strictObject({ email: emailAddress, password: typedPassword })
