import { z } from 'zod'
import { emailAddress, line, linkSecret, typedPassword } from '../text.input'
import { bakerySettings } from './bakery-settings.input'

export const setUpBakeryInput = z.strictObject({
  secret: linkSecret,
  name: line(80),
  email: emailAddress,
  password: typedPassword.min(15),
  bakeryName: line(120),
  ...bakerySettings.shape,
})
