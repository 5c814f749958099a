import { say } from '../../words/say'
import { station } from '../../words/en/station'
import { stationRepairs } from '../../words/en/station-repairs'
import type { OutDough } from '../keep/facts'
import { openDough } from '../keep/tablet'
import { Tap } from '../ui/tap'

/** The doughs that are out, with what can be done about each. */
export function OutDoughs({ out }: { out: readonly OutDough[] }) {
  if (out.length === 0) return null
  return (
    <section>
      <h2>{stationRepairs.out.list}</h2>
      <ul className="rows">
        {out.map(({ id, code, state, trialNumber, formulaName, said }) => (
          <li key={id}>
            <Tap look="row" onTap={() => void openDough(id)}>
              <b className="figure">{code}</b>
              <span>
                {say(station.doughs.trial, 'en', { number: trialNumber, formula: formulaName })}
                <br />
                {said}
              </span>
              <span className="end">{state}</span>
            </Tap>
          </li>
        ))}
      </ul>
    </section>
  )
}
