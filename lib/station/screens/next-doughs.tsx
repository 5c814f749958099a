import { useSyncExternalStore } from 'react'
import { say } from '../../words/say'
import { station } from '../../words/en/station'
import { stationMixing as words } from '../../words/en/station-mixing'
import { stationRepairs } from '../../words/en/station-repairs'
import type { NextDough } from '../keep/facts'
import { openDough } from '../keep/tablet'
import { listenOnline, readOnline } from '../talk/online'
import { Tap } from '../ui/tap'
import { useBeginning } from './use-beginning'

const { exchange } = stationRepairs

/** The dough of each trial that is to be begun next, by the order that was drawn: one tap begins it. */
export function NextDoughs({ next, personId }: { next: readonly NextDough[]; personId: string }) {
  const { begin, asked, fault } = useBeginning(personId)
  const isOnline = useSyncExternalStore(listenOnline, readOnline)
  if (next.length === 0) return null
  return (
    <section>
      <h2>{words.begin.title}</h2>
      {!isOnline && <p className="attention">{words.begin.offline}</p>}
      <p role="alert" className="fault">
        {fault}
      </p>
      <ul className="rows">
        {next.map((dough) => {
          const { id, code, trialNumber, formulaName, dayNumber, allergens, cleanDownFirst, after } = dough
          const named =
            next.length > 1
              ? say(words.begin.goOther, 'en', { code, number: trialNumber })
              : say(words.begin.go, 'en', { code })
          return (
            <li key={id}>
              <Tap
                look="main"
                disabled={asked !== null}
                onTap={() => {
                  // What is cleaned down is signed first.
                  if (cleanDownFirst) void openDough(id)
                  else void begin(dough, false)
                }}
              >
                {asked === id ? words.begin.asking : named}
              </Tap>
              <p>{say(words.begin.about, 'en', { number: trialNumber, formula: formulaName, day: dayNumber })}</p>
              {cleanDownFirst && <p className="attention">{words.begin.cleanDown}</p>}
              <p>
                {allergens.length > 0 ? say(station.dough.allergens, 'en', { allergens }) : station.dough.noAllergens}
              </p>
              {dough.unchecked > 0 && (
                <p className="attention">{say(station.dough.unchecked, 'en', { count: dough.unchecked })}</p>
              )}
              {after.length > 0 && (
                <div className="then">
                  <p>{say(exchange.after, 'en', { codes: after.map((each) => each.code) })}</p>
                  <Tap look="quiet" onTap={() => void openDough(id, { exchange: true })}>
                    {next.length > 1 ? say(exchange.goOf, 'en', { number: trialNumber }) : exchange.go}
                  </Tap>
                </div>
              )}
            </li>
          )
        })}
      </ul>
    </section>
  )
}
