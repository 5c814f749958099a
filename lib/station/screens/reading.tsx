import { useEffect, useState } from 'react'
import { say, sayName } from '../../words/say'
import { station as words } from '../../words/en/station'
import type { FloorDough, FloorMeasure, FloorPlace } from '../keep/facts'
import { keepReading, type NewReading } from '../keep/keep-reading'
import { draftKey } from '../keep/place-key'
import { remember, tablet } from '../keep/tablet'
import { saidOfEntry } from '../kinds/kinds'
import type { OutboxEntry } from '../outbox/entry'
import { placesWithEntries } from '../outbox/stand-of-place'
import { readTyped, typedWith } from '../outbox/typed-digits'
import { sendOutbox } from '../talk/send-outbox'
import { decimalMark, shownEnd, shownValue } from '../ui/figures'
import { placeName } from '../ui/place-name'
import { deleteSign, Key, Tap } from '../ui/tap'

const digits = ['7', '8', '9', '4', '5', '6', '1', '2', '3'] as const
const zero = '0'

type ReadingProps = {
  dough: FloorDough
  measure: FloorMeasure
  place: FloorPlace
  by: NewReading['by']
  entries: readonly OutboxEntry[]
  locale: string
}

/** One place: its number is typed, looked at again where it is odd, and kept on the tablet at a tap. */
export function ReadingScreen({
  dough,
  measure,
  place: { piece, repeat, factorLevel },
  by,
  entries,
  locale,
}: ReadingProps) {
  const place = { batchId: dough.id, measureId: measure.id, piece, repeat }
  const key = draftKey(by.personId, place)
  const [text, setText] = useState<string | null>(null)
  const [odd, setOdd] = useState<string | null>(null)
  const [error, setError] = useState<string | null>(null)
  const { unit, least, most } = measure

  useEffect(() => {
    let isOver = false
    void tablet.drafts.get(key).then((draft) => {
      if (!isOver) setText((typed) => typed ?? draft?.text ?? '')
    })
    return () => {
      isOver = true
    }
  }, [key])

  const type = (pressed: string) => {
    const next = typedWith(text ?? '', pressed)
    setText(next)
    setOdd(null)
    setError(null)
    tablet.drafts.put({ place: key, text: next }).catch(() => setError(words.reading.notKept))
  }
  const leave = () => remember('at', { batchId: dough.id, measureId: null, piece: null, repeat: null })
  const keep = async (isConfirmed: boolean) => {
    const value = readTyped(text ?? '')
    if (value === null) return
    const isOdd = Number(value) < least || Number(value) > most
    if (isOdd && !isConfirmed) {
      setOdd(value)
      return
    }
    try {
      const isKept = await keepReading({
        place,
        factorLevel,
        value,
        unit,
        confirmed: isOdd,
        by,
        shown: { code: dough.code, measure: measure.name },
      })
      if (!isKept) {
        setError(words.reading.taken)
        return
      }
    } catch {
      setError(words.reading.notKept)
      return
    }
    void sendOutbox()
    const next = placesWithEntries(dough.id, measure, entries).find(
      (each) => each.stands === null && (each.piece !== piece || each.repeat !== repeat),
    )
    if (next) await remember('at', { batchId: dough.id, measureId: measure.id, piece: next.piece, repeat: next.repeat })
    else await leave()
  }
  const typed = readTyped(text ?? '')
  const shown = typed === null ? null : shownValue(typed, unit, locale)
  const range = { least: shownEnd(least, unit, locale), most: shownEnd(most, unit, locale) }
  const last = entries.findLast(({ payload }) => payload.batchId === dough.id && payload.measureId === measure.id)
  const name = placeName({ piece, level: factorLevel, repeat })
  return (
    <div className="two">
      <section>
        <div className="heads">
          <h1>{say(words.dough.title, 'en', { code: dough.code })}</h1>
          <Tap look="quiet" onTap={() => void leave()}>
            {words.reading.back}
          </Tap>
        </div>
        <p className="what">{sayName(words.place.measured, 'en', { measure: measure.name, place: name })}</p>
        <p className="typed" aria-live="polite">
          {(text ?? '').replace('.', decimalMark(locale)) || '–'}
          <small>{unit}</small>
        </p>
        <p>{say(words.reading.usual, 'en', range)}</p>
        <p role="alert" className="fault">
          {error}
        </p>
        {last && (
          <p role="status">
            {saidOfEntry(last, locale)}
            <br />
            <b>{words.states[last.state]}</b>
          </p>
        )}
      </section>
      {odd !== null && shown !== null ? (
        <div role="alert" className="odd">
          <p>{say(words.reading.odd, 'en', { value: shown, ...range })}</p>
          <Tap look="plain" onTap={() => setOdd(null)}>
            {words.reading.oddChange}
          </Tap>
          <Tap look="plain" onTap={() => void keep(true)}>
            {say(words.reading.oddKeep, 'en', { value: shown })}
          </Tap>
        </div>
      ) : (
        <div className="pad">
          {digits.map((digit) => (
            <Key key={digit} name={digit} onTap={() => type(digit)}>
              {digit}
            </Key>
          ))}
          <Key name="." label={words.reading.decimal} onTap={() => type('.')}>
            {decimalMark(locale)}
          </Key>
          <Key name="0" onTap={() => type('0')}>
            {zero}
          </Key>
          <Key name="delete" label={words.reading.delete} onTap={() => type('delete')}>
            <span aria-hidden="true">{deleteSign}</span>
          </Key>
          <Tap look="main" disabled={shown === null} onTap={() => void keep(false)}>
            {shown === null ? words.reading.keepNothing : say(words.reading.keep, 'en', { value: shown })}
          </Tap>
        </div>
      )}
    </div>
  )
}
