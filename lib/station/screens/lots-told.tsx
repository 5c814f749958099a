import { say } from '../../words/say'
import { stationLots as words } from '../../words/en/station-lots'
import type { LotFrom } from '../keep/weigh-facts'

/** What each of several lots gave of a line that is written, and which of them were past their day. */
export function LotsTold({ lots, gave }: { lots: readonly LotFrom[]; gave(massG: number): string }) {
  return lots.map(({ id, code, massG, isPast }) => (
    <div key={id}>
      {massG !== null && <p>{say(words.gave, 'en', { mass: gave(massG), code })}</p>}
      {isPast && <p className="attention">{say(words.wasPast, 'en', { code })}</p>}
    </div>
  ))
}
