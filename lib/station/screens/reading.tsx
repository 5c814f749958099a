import { useState } from 'react'
import { say } from '../../words/say'
import { station as words } from '../../words/en/station'
import { stationScan } from '../../words/en/station-scan'
import type { FloorDough, FloorMeasure } from '../keep/facts'
import { keepReading, type NewReading } from '../keep/keep-reading'
import { draftKey } from '../keep/place-key'
import { openDough, remember, tablet } from '../keep/tablet'
import type { OutboxEntry } from '../outbox/entry'
import { lastRead, placesWithEntries, type StoodPlace } from '../outbox/stand-of-place'
import { sendOutbox } from '../talk/send-outbox'
import { shownValue } from '../ui/figures'
import { placeName } from '../ui/place-name'
import { Tap } from '../ui/tap'
import { NumberScreen } from './number-screen'

type ReadingProps = {
  dough: FloorDough
  measure: FloorMeasure
  place: StoodPlace
  by: NewReading['by']
  entries: readonly OutboxEntry[]
  locale: string
  onScan(): void
}

/** One place that is read now: its number is kept on the tablet, and the next place of the measure comes up. */
export function ReadingScreen({
  dough,
  measure,
  place: { piece, repeat, factorLevel },
  by,
  entries,
  locale,
  onScan,
}: ReadingProps) {
  const [error, setError] = useState<string | null>(null)
  const place = { batchId: dough.id, measureId: measure.id, piece, repeat }
  const leave = () => openDough(dough.id)
  const keep = async (value: string, confirmed: boolean) => {
    try {
      const shown = { code: dough.code, measure: measure.name }
      const isKept = await keepReading({ place, factorLevel, value, unit: measure.unit, confirmed, by, shown })
      if (!isKept) {
        setError(words.reading.taken)
        return
      }
    } catch {
      setError(words.reading.notKept)
      return
    }
    void sendOutbox()
    const now = placesWithEntries(dough.id, measure, await tablet.outbox.toArray())
    // A third that two ask for is read before the next piece is taken in hand.
    const empty = now.filter(({ stands }) => stands === null)
    const next = empty.find((each) => each.piece === piece) ?? empty[0]
    if (next) await remember('at', { batchId: dough.id, measureId: measure.id, piece: next.piece, repeat: next.repeat })
    else await leave()
  }
  const last = lastRead(placesWithEntries(dough.id, measure, entries))
  return (
    <NumberScreen
      code={dough.code}
      measure={measure}
      placeName={placeName({ piece, level: factorLevel, repeat })}
      draft={draftKey(by.personId, place)}
      locale={locale}
      error={error}
      onBack={() => void leave()}
      onKeep={(value, isConfirmed) => void keep(value, isConfirmed)}
    >
      {piece !== null && (
        <div className="acts">
          <Tap look="quiet" onTap={onScan}>
            {stationScan.goNext}
          </Tap>
        </div>
      )}
      {repeat > measure.repeats && <p className="attention">{words.reading.third}</p>}
      {last && (
        <p role="status">
          {say(words.reading.last, 'en', {
            place: placeName({ ...last, level: last.factorLevel }),
            value: shownValue(last.stands.value, last.stands.unit, locale),
          })}
          <br />
          <b>{words.states[last.stands.state]}</b>
        </p>
      )}
    </NumberScreen>
  )
}
