import { say } from '../../words/say'
import { station as words } from '../../words/en/station'
import { stationCauses } from '../../words/en/station-causes'
import { stationNotes } from '../../words/en/station-notes'
import type { FloorDough } from '../keep/facts'
import type { KeptBy } from '../keep/keep-entry'
import { forget, remember, type Kept } from '../keep/tablet'
import type { KeptList } from '../keep/weigh-facts'
import type { OutboxEntry } from '../outbox/entry'
import { placesWithEntries } from '../outbox/stand-of-place'
import { stepsOfDough } from '../outbox/steps-of-dough'
import { shownTime, shownValue } from '../ui/figures'
import { placeName } from '../ui/place-name'
import { Tap } from '../ui/tap'
import { Steps } from './steps'
import { TakeBack } from './take-back'
import { WeighGate } from './weigh-gate'
import { WentWrong } from './went-wrong'

type DoughProps = {
  dough: FloorDough | null
  kept: KeptList | null
  begun: Kept['begun'] | null
  by: KeptBy
  aheadMs: number
  temperatureUnit: '°C' | '°F'
  entries: readonly OutboxEntry[]
  locale: string
  timeZone: string
}

/** One dough: what can hurt somebody at it, and every place that is read, with what stands there. */
export function DoughScreen({ dough, kept, begun, by, entries, locale, timeZone, ...clock }: DoughProps) {
  const { personId } = by
  const back = (
    <Tap look="quiet" onTap={() => void forget('at')}>
      {words.dough.back}
    </Tap>
  )
  if (!dough)
    return (
      <div className="narrow">
        {back}
        <p>{words.dough.gone}</p>
      </div>
    )
  return (
    <div className="narrow">
      <div className="heads">
        <h1>{say(words.dough.title, 'en', { code: dough.code })}</h1>
        {back}
      </div>
      <div className="acts">
        <Tap look="quiet" onTap={() => void remember('noting', { batchId: dough.id, code: dough.code })}>
          {stationNotes.write}
        </Tap>
        <Tap look="quiet" onTap={() => void remember('wrong', { batchId: dough.id, code: dough.code })}>
          {stationCauses.go}
        </Tap>
      </div>
      <WentWrong {...{ dough, entries, locale, timeZone }} />
      <p>
        <b>
          {dough.allergens.length > 0
            ? say(words.dough.allergens, 'en', { allergens: dough.allergens })
            : words.dough.noAllergens}
        </b>
      </p>
      {dough.unchecked > 0 && (
        <p className="attention">{say(words.dough.unchecked, 'en', { count: dough.unchecked })}</p>
      )}
      {begun?.batchId === dough.id && begun.personId === personId && <TakeBack key={begun.at} begun={begun} />}
      <WeighGate
        {...{ dough, kept, personId, entries }}
        isMain={stepsOfDough(dough, entries, clock.aheadMs).length === 0}
      />
      <Steps {...clock} {...{ dough, entries, by, locale, timeZone }} />
      {dough.measures.map((measure) => {
        const places = placesWithEntries(dough.id, measure, entries)
        const isRead = places.every(({ stands }) => stands !== null)
        return (
          <section key={measure.id}>
            <h2>
              {measure.name}
              <small>{isRead ? words.dough.read : measure.isWanted ? words.dough.wanted : words.dough.optional}</small>
            </h2>
            <ul className="rows">
              {places.map(({ piece, repeat, factorLevel, stands, lost }) => (
                <li key={`${piece} ${repeat}`}>
                  {stands ? (
                    <div className="stood">
                      <Tap
                        look="row"
                        onTap={() =>
                          void remember('at', { batchId: dough.id, measureId: measure.id, piece, repeat, isFix: true })
                        }
                      >
                        <span>{placeName({ piece, level: factorLevel, repeat })}</span>
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
                      onTap={() => void remember('at', { batchId: dough.id, measureId: measure.id, piece, repeat })}
                    >
                      <span>{placeName({ piece, level: factorLevel, repeat })}</span>
                      <span className="end">{words.place.empty}</span>
                    </Tap>
                  )}
                </li>
              ))}
            </ul>
          </section>
        )
      })}
    </div>
  )
}
