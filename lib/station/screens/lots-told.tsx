import { say } from '../../words/say'
import { lotName } from '../ui/lot-name'
import { stationLots as words } from '../../words/en/station-lots'
import type { LotFrom } from '../keep/weigh-facts'

/** What each of several lots gave of a line that is written, and which of them were past their day. */
export function LotsTold({ lots, gave }: { lots: readonly LotFrom[]; gave(massG: number): string }) {
  return lots.map(({ id, massG, isPast, ...lot }) => (
    <div key={id}>
      {massG !== null && <p>{say(words.gave, 'en', { mass: gave(massG), code: lotName(lot) })}</p>}
      {isPast && <p className="attention">{say(words.wasPast, 'en', { code: lotName(lot) })}</p>}
    </div>
  ))
}
