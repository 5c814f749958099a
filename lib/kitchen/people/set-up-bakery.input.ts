import { z } from 'zod'
import { chosenPassword, emailAddress, line, linkSecret } from '../text.input'
import { bakerySettings } from './bakery-settings.input'

export const setUpBakeryInput = z.strictObject({
  secret: linkSecret,
  name: line(80),
  email: emailAddress,
  password: chosenPassword,
  bakeryName: line(120),
  ...bakerySettings.shape,
})
