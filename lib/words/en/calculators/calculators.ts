import { reasons } from './reasons'
import { units } from './units'

/** The pages of the calculations, and what stands around every one of them. */
export const calculators = {
  title: 'Calculators',
  reasons,
  units,
} as const
