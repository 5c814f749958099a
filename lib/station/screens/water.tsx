import { stationWater as words } from '../../words/en/station-water'
import type { Floor, FloorDough } from '../keep/facts'
import { clockAheadMs } from '../outbox/clock-ahead'
import { dayBegan } from '../outbox/day-began'
import type { OutboxEntry } from '../outbox/entry'
import { waterOfDough } from '../outbox/water-of-dough'
import { sayNoWater, sayWater } from '../ui/say-water'
import { useNow } from '../ui/use-now'
import { Places } from './places'

const everyMs = 60_000

type WaterProps = {
  dough: FloorDough
  floor: { value: Floor; at: number }
  entries: readonly OutboxEntry[]
  locale: string
  timeZone: string
}

/** The water of a dough before it is mixed, worked out here, and what is read for it. */
export function Water({ dough, floor, entries, locale, timeZone }: WaterProps) {
  const now = useNow(everyMs)
  const { water: facts } = dough
  const { doughs, temperatureUnit: unit } = floor.value
  // The doughs' own moments are the book's.
  const found = waterOfDough(dough, doughs, entries, dayBegan(floor, now) + clockAheadMs(floor))
  const said = found && sayWater(found.told, found.facts, found.temps, { unit, locale, words, language: 'en' })
  return (
    <>
      <section>
        <h2>{words.title}</h2>
        {facts && facts.outcome !== 'known' && <p>{sayNoWater(facts.outcome, words)}</p>}
        {said?.headline && <p className="water-told">{said.headline}</p>}
        {said?.minded.map((each) => (
          <p key={each} className="attention">
            {each}
          </p>
        ))}
        {said?.behind.map((each) => (
          <p key={each}>{each}</p>
        ))}
      </section>
      <Places {...{ dough, entries, locale, timeZone }} piece={null} of="before-mixing" />
    </>
  )
}
