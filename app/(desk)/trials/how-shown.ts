import type { TrialContent } from '@/lib/kitchen/trials/trial-content.input'

type Dose = TrialContent['arms'][number]['doses'][number]

/** Under which choice of the form a dose stands. */
export function howShown({ how, value, allOfIt }: Pick<Dose, 'how' | 'value' | 'allOfIt'>): string {
  if (allOfIt) return 'in_place_all'
  return how === 'in_all' && value === 0 ? 'without' : how
}
