import { describe, expect, it } from 'vitest'
import { placeSourceFault } from '@/app/(desk)/stores/ingredients/place-source-fault'
import { emptyFormState } from '@/lib/ui/form-state'

const refused = (problems: Record<string, string>, values: Record<string, string> = {}) => ({
  ...emptyFormState,
  problems,
  values,
  refusal: 'Not kept yet.',
})

describe('figures without a source', () => {
  it('ask once, for the source of all of them, before any other fault of the composition', () => {
    const state = placeSourceFault(
      refused(
        { name: 'needed', 'figures.water.source': 'needed', 'figures.fat.source': 'needed' },
        { compositionSource: ' ' },
      ),
    )
    expect(state.problems).toEqual({ compositionSource: 'needed', name: 'needed' })
  })

  it('keep a fault of a source that was typed', () => {
    const problems = { 'figures.water.source': 'too long' }
    expect(placeSourceFault(refused(problems, { 'figures.water.source': 'x'.repeat(300) })).problems).toEqual(problems)
    expect(placeSourceFault(refused(problems, { compositionSource: 'x'.repeat(300) })).problems).toEqual(problems)
  })
})
