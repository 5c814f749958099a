import { say } from '../../words/say'
import { station as words } from '../../words/en/station'
import type { FloorDough } from '../keep/facts'

/** What can hurt somebody at a dough, on every screen of it: its allergens, and what nobody has checked for any. */
export function Cautions({ dough: { allergens, unchecked } }: { dough: Pick<FloorDough, 'allergens' | 'unchecked'> }) {
  return (
    <>
      <p>
        <b>{allergens.length > 0 ? say(words.dough.allergens, 'en', { allergens }) : words.dough.noAllergens}</b>
      </p>
      {unchecked > 0 && <p className="attention">{say(words.dough.unchecked, 'en', { count: unchecked })}</p>}
    </>
  )
}
