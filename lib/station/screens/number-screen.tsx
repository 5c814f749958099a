import { useState, type ReactNode } from 'react'
import { say, sayName } from '../../words/say'
import { station as words } from '../../words/en/station'
import type { FloorMeasure } from '../keep/facts'
import { readTyped } from '../outbox/typed-digits'
import { shownEnd, shownTyped, shownValue } from '../ui/figures'
import { NumberPad } from '../ui/number-pad'
import { Tap } from '../ui/tap'
import { useDraft } from '../ui/use-draft'

type NumberScreenProps = {
  code: string
  measure: Pick<FloorMeasure, 'name' | 'unit' | 'least' | 'most'>
  placeName: string
  /** Under what a half-typed number is kept. */
  draft: string
  locale: string
  /** What went wrong with keeping it. */
  error: string | null
  onBack(): void
  onKeep(value: string, isConfirmed: boolean): void
  /** What else is told beside the pad. */
  children?: ReactNode
}

/** One number of a place: typed, looked at again where it is odd, and kept at a tap. */
export function NumberScreen(q: NumberScreenProps) {
  const { code, measure, placeName, draft, locale, error, onBack, onKeep, children } = q
  const { text, type: typeDraft, isLost } = useDraft(draft)
  const [odd, setOdd] = useState<string | null>(null)
  const [isTyping, setTyping] = useState(true)
  const { unit, least, most } = measure

  const type = (next: string) => {
    setOdd(null)
    setTyping(true)
    typeDraft(next)
  }
  const typed = readTyped(text ?? '')
  const shown = typed === null ? null : shownValue(typed, unit, locale)
  const range = { least: shownEnd(least, unit, locale), most: shownEnd(most, unit, locale) }
  const keep = () => {
    if (typed === null) return
    setTyping(false)
    if (Number(typed) < least || Number(typed) > most) setOdd(typed)
    else onKeep(typed, false)
  }
  return (
    <div className="two">
      <section>
        <div className="heads">
          <h1>{say(words.dough.title, 'en', { code })}</h1>
          <Tap look="quiet" onTap={onBack}>
            {words.reading.back}
          </Tap>
        </div>
        <p className="what">{sayName(words.place.measured, 'en', { measure: measure.name, place: placeName })}</p>
        <p className="typed" aria-live="polite">
          {shownTyped(text ?? '', locale) || '…'}
          <small>{unit}</small>
        </p>
        <p>{say(words.reading.usual, 'en', range)}</p>
        <p role="alert" className="fault">
          {isLost ? words.reading.notKept : isTyping ? null : error}
        </p>
        {children}
      </section>
      {odd !== null && shown !== null ? (
        <div role="alert" className="odd">
          <p>{say(words.reading.odd, 'en', { value: shown, ...range })}</p>
          <Tap look="plain" onTap={() => setOdd(null)}>
            {words.reading.oddChange}
          </Tap>
          <Tap look="plain" onTap={() => onKeep(odd, true)}>
            {say(words.reading.oddKeep, 'en', { value: shown })}
          </Tap>
        </div>
      ) : (
        <NumberPad
          text={text ?? ''}
          onType={type}
          locale={locale}
          keep={shown === null ? words.reading.keepNothing : say(words.reading.keep, 'en', { value: shown })}
          canKeep={shown !== null}
          onKeep={keep}
          isSigned={least < 0 || unit.startsWith('°')}
        />
      )}
    </div>
  )
}
