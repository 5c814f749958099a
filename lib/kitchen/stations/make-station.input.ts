import { z } from 'zod'
import { line } from '../text.input'

export const makeStationInput = z.strictObject({ name: line(40) })
