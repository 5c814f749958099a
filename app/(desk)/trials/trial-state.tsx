import type { Standing } from '@/lib/kitchen/trials/rules'
import { StateWord } from '@/lib/ui/state-word'
import type { Words } from '@/lib/words/words'

const levels = {
  draft: 0,
  sent_back: 0,
  proposed: 1,
  approved: 2,
  baking: 3,
  closed: 4,
  declined: 'off',
  stopped: 'off',
} as const satisfies Record<Standing, 0 | 1 | 2 | 3 | 4 | 'off'>

/** Where a trial stands. */
export function TrialState({ standing, text }: { standing: Standing; text: Words['trials'] }) {
  return <StateWord word={text.states[standing]} level={levels[standing]} />
}
