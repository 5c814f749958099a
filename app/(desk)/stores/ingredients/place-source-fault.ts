import type { FormState } from '@/lib/ui/form-state'

const ofFigure = /^figures\.[^.]+\.source$/

/**
 * A refused form of an ingredient with the fault where somebody would mend it: figures without a source want the one
 * for all of them, which stands above, and not another source for each.
 */
export function placeSourceFault(state: FormState): FormState {
  const isOpen = (field: string) => (state.values[field] ?? '').trim() === ''
  if (!isOpen('compositionSource')) return state
  const faults = Object.entries(state.problems)
  const [moved] = faults.filter(([field]) => ofFigure.test(field) && isOpen(field))
  if (!moved) return state
  const others = faults.filter(([field]) => !(ofFigure.test(field) && isOpen(field)))
  return { ...state, problems: { compositionSource: moved[1], ...Object.fromEntries(others) } }
}
