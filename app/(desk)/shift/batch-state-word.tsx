import { StateWord } from '@/lib/ui/state-word'
import type { Words } from '@/lib/words/words'

type BatchStateName = keyof Words['shift']['states']

const levels: Record<BatchStateName, 0 | 1 | 2 | 3 | 4 | 'off'> = {
  waiting: 0,
  weighing: 1,
  in_work: 2,
  baked: 3,
  measured: 4,
  lost: 'off',
  set_aside: 'off',
  not_baked: 'off',
}

/** How far along a batch is. */
export function BatchStateWord({ state, words }: { state: BatchStateName; words: Words['shift'] }) {
  return <StateWord word={words.states[state]} level={levels[state]} />
}
