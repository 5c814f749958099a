import { useState } from 'react'
import { say } from '../../words/say'
import { station as words } from '../../words/en/station'
import { stationDisplacement } from '../../words/en/station-displacement'
import { stationScan } from '../../words/en/station-scan'
import type { FloorDough, FloorMeasure } from '../keep/facts'
import { keepReading, type NewReading } from '../keep/keep-reading'
import { atDisplacement, openDisplacement } from '../keep/displacement'
import { draftKey } from '../keep/place-key'
import { atDough, openDough, tablet, type At, type Kept } from '../keep/tablet'
import { checksOfDay } from '../outbox/checks-of-day'
import { emptyGaugeToday } from '../outbox/empty-gauge-today'
import type { OutboxEntry } from '../outbox/entry'
import { lastRead, placesWithEntries, type StoodPlace } from '../outbox/stand-of-place'
import { sendOutbox } from '../talk/send-outbox'
import { shownValue } from '../ui/figures'
import { placeName } from '../ui/place-name'
import { Tap } from '../ui/tap'
import { useNow } from '../ui/use-now'
import { useGoOn } from '../ui/use-go-on'
import { Displacement } from './displacement'
import { GaugeOff } from './gauges-today'
import { NumberScreen } from './number-screen'

type ReadingProps = {
  dough: FloorDough
  measure: FloorMeasure
  place: StoodPlace
  by: NewReading['by']
  floor: Kept['floor']
  entries: readonly OutboxEntry[]
  displace: At['displace'] | null
  emptyGauge: Kept['emptyGauge'] | null
  locale: string
  timeZone: string
  onScan(): void
}

/** One place that is read now: its number is kept on the tablet, and the next place of the measure comes up. */
export function ReadingScreen({
  dough,
  measure,
  place: { piece, repeat, factorLevel },
  by,
  floor,
  entries,
  displace,
  emptyGauge,
  locale,
  timeZone,
  onScan,
}: ReadingProps) {
  const now = useNow()
  const [error, setError] = useState<string | null>(null)
  const place = { batchId: dough.id, measureId: measure.id, piece, repeat }
  const goOn = useGoOn()
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
    const places = placesWithEntries(dough.id, measure, await tablet.outbox.toArray())
    // A third that two ask for is read before the next piece is taken in hand.
    const empty = places.filter(({ stands }) => stands === null)
    const next = empty.find((each) => each.piece === piece) ?? empty[0]
    // Whoever read this one step by step reads the next one so.
    const then = next && { ...place, piece: next.piece, repeat: next.repeat }
    await goOn(then ? atDisplacement(then, displace === 'put' ? 'guided' : null) : atDough(dough.id))
  }
  const last = lastRead(placesWithEntries(dough.id, measure, entries))
  const named = placeName({ piece, level: factorLevel, repeat })
  const gauges = measure.byDisplacement
    ? checksOfDay(floor, entries, now).filter(({ kind }) => kind === 'volume_gauge')
    : []
  if (measure.byDisplacement && (displace === 'guided' || displace === 'anew'))
    return (
      <Displacement
        key={displace}
        code={dough.code}
        measure={measure.name}
        placeName={named}
        empty={displace === 'anew' ? null : emptyGaugeToday(emptyGauge, floor, now)}
        {...{ place, gauges, by, locale, timeZone }}
      />
    )
  return (
    <NumberScreen
      code={dough.code}
      measure={measure}
      placeName={named}
      draft={draftKey(by.personId, place)}
      locale={locale}
      error={error}
      onBack={() => void openDough(dough.id)}
      onKeep={(value, isConfirmed) => void keep(value, isConfirmed)}
    >
      {measure.byDisplacement && (
        <>
          <Tap look="plain" onTap={() => void openDisplacement(place, 'guided')}>
            {stationDisplacement.go}
          </Tap>
          {gauges.map((gauge) => (
            <GaugeOff key={gauge.id} gauge={gauge} locale={locale} />
          ))}
        </>
      )}
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
