import { z } from 'zod'
import { chosenPassword, linkSecret } from '../text.input'

export const acceptInvitationInput = z.strictObject({ secret: linkSecret, password: chosenPassword })
