import { StateWord } from '@/lib/ui/state-word'
import type { Words } from '@/lib/words/words'

type VersionStateProps = { state: keyof Words['formulas']['states']; isPartSigned?: boolean; text: Words['formulas'] }

const levels = { draft: 1, coming: 3, 'in-production': 4, withdrawn: 'off', discarded: 'off' } as const

/** Where a version stands, as a word. */
export function VersionState({ state, isPartSigned = false, text }: VersionStateProps) {
  return isPartSigned ? (
    <StateWord word={text.partSigned} level={2} />
  ) : (
    <StateWord word={text.states[state]} level={levels[state]} />
  )
}
