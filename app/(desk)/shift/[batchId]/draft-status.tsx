import { ErrorLine } from '@/lib/ui/error-line'
import type { DraftState } from './use-reading-draft'
import type { ReadingWords } from './reading-types'

/** Where an entry is, in words: on its way, refused, or perhaps not in the book. */
export function DraftStatus({ id, state, words }: { id: string; state: DraftState; words: ReadingWords }) {
  return (
    <div aria-live="polite">
      {state.step === 'sending' ? <p className="mt-1">{words.sending}</p> : null}
      {state.step === 'unsent' ? <ErrorLine id={`${id}-status`} text={state.why === 'not-answered' ? words.notSent : words.wrongEcho} /> : null}
      {state.step === 'refused' ? <ErrorLine id={`${id}-status`} text={[words.notKept, ...faultsOf(state)].join(' ')} /> : null}
    </div>
  )
}

/** The faults at the fields say more than the sentence that sums them up. */
function faultsOf({ words, problems }: { words: string; problems: Record<string, string> }): string[] {
  const faults = Object.values(problems)
  return faults.length > 0 ? faults : [words]
}
