import type { SearchValue } from '@/lib/ui/search'

export type DoseShown = {
  ingredient: SearchValue
  value: string
  basis: string
  doseOf: string
  how: string
  insteadOf: SearchValue
  equalBy: string
}

const nothing: SearchValue = { id: '', text: '' }

/** A dose before anything is chosen. */
export const emptyDose: DoseShown = {
  ingredient: nothing,
  value: '',
  basis: 'pct_flour',
  doseOf: 'product',
  how: 'more',
  insteadOf: nothing,
  equalBy: 'mass',
}
