import { StateWord } from '@/lib/ui/state-word'
import type { Words } from '@/lib/words/words'

type State = keyof Words['trials']['states']

const levels = { draft: 0, proposed: 1, approved: 2, baking: 3, closed: 4, declined: 'off', stopped: 'off' } as const satisfies Record<State, 0 | 1 | 2 | 3 | 4 | 'off'>

/** Where a trial stands. */
export function TrialState({ state, text }: { state: State; text: Words['trials'] }) {
  return <StateWord word={text.states[state]} level={levels[state]} />
}
