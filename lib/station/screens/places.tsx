import { isBeforeMixing } from '../../kitchen/readings/before-mixing.input'
import { say } from '../../words/say'
import { station as words } from '../../words/en/station'
import type { FloorDough } from '../keep/facts'
import { remember } from '../keep/tablet'
import type { OutboxEntry } from '../outbox/entry'
import { placesWithEntries } from '../outbox/stand-of-place'
import { shownTime, shownValue } from '../ui/figures'
import { placeName } from '../ui/place-name'
import { Tap } from '../ui/tap'

type PlacesProps = {
  dough: FloorDough
  /** Of one piece alone; null for every place of the dough. */
  piece: number | null
  /** Only what is read before mixing, or only all else. */
  of?: 'before-mixing' | 'all-else'
  entries: readonly OutboxEntry[]
  locale: string
  timeZone: string
}

/** What is read of a dough, measure by measure: each place with what stands there. */
export function Places({ dough, piece, of: which, entries, locale, timeZone }: PlacesProps) {
  const measures = dough.measures.filter(
    ({ code }) => which === undefined || isBeforeMixing(code) === (which === 'before-mixing'),
  )
  return measures.map((measure) => {
    const all = placesWithEntries(dough.id, measure, entries)
    const places = piece === null ? all : all.filter((each) => each.piece === piece)
    if (places.length === 0) return null
    const isRead = places.every(({ stands }) => stands !== null)
    return (
      <section key={measure.id}>
        <h2>
          {measure.name}
          <small>{isRead ? words.dough.read : measure.isWanted ? words.dough.wanted : words.dough.optional}</small>
        </h2>
        <ul className="rows">
          {places.map(({ piece: of, repeat, factorLevel, stands, lost }) => (
            <li key={`${of} ${repeat}`}>
              {stands ? (
                <div className="stood">
                  <Tap
                    look="row"
                    onTap={() =>
                      void remember('at', { batchId: dough.id, measureId: measure.id, piece: of, repeat, isFix: true })
                    }
                  >
                    <span>{placeName({ piece: of, level: factorLevel, repeat })}</span>
                    <b className="figure">{shownValue(stands.value, stands.unit, locale)}</b>
                    <span className="end">
                      {words.states[stands.state]}
                      <br />
                      <small>
                        {say(words.place.byAt, 'en', {
                          who: stands.who,
                          at: shownTime(stands.at, { locale, timeZone }),
                        })}
                      </small>
                    </span>
                  </Tap>
                  {lost.map(({ value, unit }, at) => (
                    <p key={at} className="attention">
                      {say(words.place.lost, 'en', { value: shownValue(value, unit, locale) })}
                    </p>
                  ))}
                </div>
              ) : (
                <Tap
                  look="row"
                  onTap={() => void remember('at', { batchId: dough.id, measureId: measure.id, piece: of, repeat })}
                >
                  <span>{placeName({ piece: of, level: factorLevel, repeat })}</span>
                  <span className="end">{words.place.empty}</span>
                </Tap>
              )}
            </li>
          ))}
        </ul>
      </section>
    )
  })
}
