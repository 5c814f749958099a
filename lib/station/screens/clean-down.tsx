import { say } from '../../words/say'
import { station } from '../../words/en/station'
import { stationMixing as words } from '../../words/en/station-mixing'
import type { NextDough } from '../keep/facts'
import { forget } from '../keep/tablet'
import { Tap } from '../ui/tap'
import { useBeginning } from './use-beginning'

type CleanDownProps = { dough: NextDough; person: { id: string; name: string } }

/** A clean-down that the order asks for: the dough is begun, and so weighed out, once somebody has signed it. */
export function CleanDown({ dough, person }: CleanDownProps) {
  const { begin, asked, fault } = useBeginning(person.id)
  const { code, allergens } = dough
  return (
    <div className="narrow">
      <div className="heads">
        <h1>{say(words.cleanDown.title, 'en', { code })}</h1>
        <Tap look="quiet" onTap={() => void forget('at')}>
          {station.dough.back}
        </Tap>
      </div>
      <p className="what">{words.cleanDown.why}</p>
      <p>{allergens.length > 0 ? say(station.dough.allergens, 'en', { allergens }) : station.dough.noAllergens}</p>
      <p>{say(words.cleanDown.signed, 'en', { name: person.name })}</p>
      <p role="alert" className="fault">
        {fault}
      </p>
      <Tap look="main" disabled={asked !== null} onTap={() => void begin(dough, true)}>
        {asked === null ? say(words.cleanDown.sign, 'en', { code }) : words.begin.asking}
      </Tap>
    </div>
  )
}
