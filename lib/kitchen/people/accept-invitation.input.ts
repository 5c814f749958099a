import { z } from 'zod'
import { linkSecret, typedPassword } from '../text.input'

export const acceptInvitationInput = z.strictObject({ secret: linkSecret, password: typedPassword.min(15) })
