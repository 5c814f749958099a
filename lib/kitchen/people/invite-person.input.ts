import { z } from 'zod'
import { emailAddress, line } from '../text.input'
import { role } from './roles.input'

export const invitePersonInput = z.strictObject({ name: line(80), email: emailAddress, role })
