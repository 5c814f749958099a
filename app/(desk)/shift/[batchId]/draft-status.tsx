import { ErrorLine } from '@/lib/ui/error-line'
import { FloorButton } from '@/lib/ui/floor-button'
import { paragraph } from '@/lib/words/paragraph'
import { say } from '@/lib/words/say'
import type { DraftState } from './use-reading-draft'
import type { MeasureToRead, ReadingWords } from './reading-types'

type DraftStatusProps = {
  id: string
  state: DraftState
  measure: MeasureToRead
  words: ReadingWords
  language: string
  /** What is typed, with its unit. */
  value: string
  /** A moment in words. */
  sayMoment(at: string): string
  onConfirm(): void
  /** Left out where the form has a way of its own to leave it. */
  onThrowAway?(): void
}

/**
 * Where an entry is, in words: on its way, refused, kept aside, or perhaps not in the book. One outside what is usual is confirmed
 * here, away from where Keep was, so that a double tap confirms nothing.
 */
export function DraftStatus({ id, state, measure, words, language, value, ...props }: DraftStatusProps) {
  return (
    <div aria-live="polite">
      {state.step === 'back' ? (
        <>
          <p className={`mt-1 max-w-column ${state.isChanged ? 'font-semibold text-warn' : ''}`}>
            {say(state.isChanged ? words.backChanged : words.back, language, { at: props.sayMoment(state.at) })}
          </p>
          {props.onThrowAway ? (
            <div className="mt-2">
              <FloorButton tone="plain" onPress={props.onThrowAway}>
                {words.throwAway}
              </FloorButton>
            </div>
          ) : null}
        </>
      ) : null}
      {state.step === 'empty' ? <ErrorLine id={`${id}-status`} text={words.emptyField} /> : null}
      {state.step === 'sending' ? <p className="mt-1">{words.sending}</p> : null}
      {state.step === 'unsent' ? (
        <ErrorLine id={`${id}-status`} text={state.why === 'not-answered' ? words.notSent : words.wrongEcho} />
      ) : null}
      {state.step === 'refused' ? (
        <ErrorLine id={`${id}-status`} text={paragraph([words.notKept, ...faultsOf(state)], language)} />
      ) : null}
      {state.step === 'aside' ? <ErrorLine id={`${id}-status`} text={state.words} /> : null}
      {state.step === 'odd' ? (
        <>
          <ErrorLine
            id={`${id}-status`}
            text={say(words.askOdd, language, { least: measure.least, most: measure.most })}
          />
          <div className="mt-2">
            <FloorButton tone="stop" onPress={props.onConfirm}>
              {say(words.keepOdd, language, { value })}
            </FloorButton>
          </div>
        </>
      ) : null}
    </div>
  )
}

/** The faults at the fields say more than the sentence that sums them up. */
function faultsOf({ words, problems }: { words: string; problems: Record<string, string> }): string[] {
  const faults = Object.values(problems)
  return faults.length > 0 ? faults : [words]
}
