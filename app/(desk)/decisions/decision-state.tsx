import { StateWord } from '@/lib/ui/state-word'
import type { Words } from '@/lib/words/words'

const levels = { waiting: 2, signed: 4, kept: 4, 'taken-back': 'off' } as const

/** Where a decision stands, as a word. */
export function DecisionState({ state, text }: { state: keyof typeof levels; text: Words['decisions'] }) {
  return <StateWord word={text.states[state]} level={levels[state]} />
}
