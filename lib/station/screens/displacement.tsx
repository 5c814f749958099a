import { useState, type ReactNode } from 'react'
import { say, sayName } from '../../words/say'
import { station } from '../../words/en/station'
import { stationDisplacement as words } from '../../words/en/station-displacement'
import { keepEmptyGauge, openDisplacement, putOnPad, withKey, withoutKey } from '../keep/displacement'
import type { KeptBy } from '../keep/keep-entry'
import type { Place } from '../keep/place-key'
import type { Kept } from '../keep/tablet'
import type { InstrumentToday } from '../outbox/checks-of-day'
import { loafVolume } from '../outbox/loaf-volume'
import { readTyped } from '../outbox/typed-digits'
import { shownEnd, shownTime, shownTyped, shownValue } from '../ui/figures'
import { NumberPad } from '../ui/number-pad'
import { Tap } from '../ui/tap'
import { useDraft } from '../ui/use-draft'
import { GaugesToday } from './gauges-today'

const unit = 'mL'

type DisplacementProps = {
  code: string
  measure: string
  placeName: string
  place: Place
  /** What was read without a loaf today; null where it is read now. */
  empty: Kept['emptyGauge'] | null
  gauges: readonly InstrumentToday[]
  by: KeptBy
  locale: string
  timeZone: string
}

/** A volume by seed, step by step: what the gauge shows without the loaf, once a day, and with it. */
export function Displacement(q: DisplacementProps) {
  return q.empty ? <WithLoaf {...q} empty={q.empty} /> : <WithoutLoaf {...q} />
}

function WithoutLoaf(q: DisplacementProps) {
  const { place, gauges, by, locale } = q
  const { text, type, isLost } = useDraft(withoutKey(by.personId))
  const [fault, setFault] = useState<string | null>(null)
  const typed = readTyped(text ?? '')
  const most = largestOf(gauges)
  const goOn = (value: string) => {
    if (Number(value) > most)
      setFault(say(words.emptyTooLarge, 'en', { value: own(value, locale), most: shownEnd(most, unit, locale) }))
    else keepEmptyGauge(value, by, place).catch(() => setFault(station.reading.notKept))
  }
  return (
    <Steps
      {...q}
      title={words.without}
      steps={[words.fillEmpty, words.strike, words.readEmpty]}
      fault={isLost ? station.reading.notKept : fault}
      text={text}
      onType={(next) => {
        setFault(null)
        type(next)
      }}
      keep={typed === null ? words.nextNothing : say(words.next, 'en', { value: own(typed, locale) })}
      onKeep={goOn}
    />
  )
}

function WithLoaf(q: DisplacementProps & { empty: Kept['emptyGauge'] }) {
  const { place, empty, gauges, by, locale, timeZone } = q
  const { text, type, isLost } = useDraft(withKey(by.personId, place))
  const [fault, setFault] = useState<string | null>(null)
  const typed = readTyped(text ?? '')
  const most = largestOf(gauges)
  const without = own(empty.value, locale)
  const of = typed === null ? null : loafVolume({ withLoaf: typed, without: empty.value, mostMl: most })
  const volume = of?.outcome === 'volume' ? of.volume : null
  const put = (value: string) => {
    if (volume !== null) putOnPad(volume, by.personId, place).catch(() => setFault(station.reading.notKept))
    else if (of?.outcome === 'too-large') setFault(say(words.tooLarge, 'en', { most: shownEnd(most, unit, locale) }))
    else setFault(say(words.notMore, 'en', { value: own(value, locale), without }))
  }
  return (
    <Steps
      {...q}
      title={words.with}
      more={
        <Tap look="quiet" onTap={() => void openDisplacement(place, 'anew')}>
          {words.anew}
        </Tap>
      }
      steps={[words.putIn, words.strike, words.readWith]}
      fault={isLost ? station.reading.notKept : fault}
      text={text}
      onType={(next) => {
        setFault(null)
        type(next)
      }}
      keep={volume === null ? words.putNothing : say(words.put, 'en', { volume: own(volume, locale) })}
      onKeep={put}
    >
      <p>{say(words.less, 'en', { without, who: empty.who, at: shownTime(empty.at, { locale, timeZone }) })}</p>
      <p className="typed" role="status">
        {volume === null ? '…' : shownTyped(volume, locale)}
        <small>{unit}</small>
      </p>
    </Steps>
  )
}

type StepsProps = DisplacementProps & {
  title: string
  steps: readonly string[]
  fault: string | null
  /** What is on the pad; null until it is read from the tablet. */
  text: string | null
  onType: (text: string) => void
  /** What the key under the pad says. */
  keep: string
  onKeep: (typed: string) => void
  /** What else can be done, behind what is told. */
  more?: ReactNode
  children?: ReactNode
}

function Steps({
  code,
  measure,
  placeName,
  place,
  gauges,
  locale,
  title,
  steps,
  fault,
  text,
  onType,
  keep,
  onKeep,
  more,
  children,
}: StepsProps) {
  const typed = readTyped(text ?? '')
  return (
    <div className="two">
      <section>
        <div className="heads">
          <h1>{title}</h1>
          <Tap look="quiet" onTap={() => void openDisplacement(place, null)}>
            {words.toPad}
          </Tap>
        </div>
        <p>
          {say(station.dough.title, 'en', { code })}
          <br />
          {sayName(station.place.measured, 'en', { measure, place: placeName })}
        </p>
        <GaugesToday gauges={gauges} locale={locale} />
        <ol className="steps">
          {steps.map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
        <p className="typed" aria-live="polite">
          {shownTyped(text ?? '', locale) || '…'}
          <small>{unit}</small>
        </p>
        {children}
        <p role="alert" className="fault">
          {fault}
        </p>
        {more}
        <p>{words.caution}</p>
      </section>
      <NumberPad
        text={text ?? ''}
        onType={onType}
        locale={locale}
        keep={keep}
        canKeep={typed !== null}
        onKeep={() => typed !== null && onKeep(typed)}
      />
    </div>
  )
}

function own(value: string, locale: string): string {
  return shownValue(value, unit, locale)
}

/** What the largest gauge holds, mL; Infinity where the book knows none. */
function largestOf(gauges: readonly InstrumentToday[]): number {
  const held = gauges.flatMap(({ volumeMl }) => volumeMl ?? [])
  return held.length === 0 ? Infinity : Math.max(...held)
}
