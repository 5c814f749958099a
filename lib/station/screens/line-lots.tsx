import { say } from '../../words/say'
import { stationLots as words } from '../../words/en/station-lots'
import type { LotOffered } from '../keep/weigh-facts'
import { withAnother, withoutLot, type LotsChosen } from '../outbox/lots-of-line'
import { Tap } from '../ui/tap'

/** The book takes ten of a line. */
const mostGiven = 9

/** From which lots a line is weighed, and how that is changed. */
export type LotsOfPad = {
  chosen: LotsChosen
  choose(next: LotsChosen): void
  /** The one that is offered first; null where none is. */
  last: LotOffered | null
  /** Opens all that are offered. */
  onPick(): void
}

type LineLotsProps = LotsOfPad & {
  /** What the pad shows of the lot that is on the scale now; null for nothing. */
  typed: string | null
  shown(mass: string): string
  /** Takes what is typed away: it is of its lot. */
  onGiven(): void
}

/** Of which lot the line is, said at a tap; a sack that runs out in the middle has given its part, and another one the rest. */
export function LineLots({ chosen, choose, last, onPick, typed, shown, onGiven }: LineLotsProps) {
  const { given, now } = chosen
  const past = [...given, ...(now ? [now] : [])].filter(({ isPast }) => isPast)
  const isFree = last !== null && now === null && given.every(({ id }) => id !== last.id)
  return (
    <div className="lots">
      {given.map(({ id, code, mass }) => (
        <div key={id} className="given">
          <b>{say(words.gave, 'en', { mass: shown(mass), code })}</b>
          <Tap look="quiet" onTap={() => choose(withoutLot(chosen, id))}>
            {say(words.away, 'en', { code })}
          </Tap>
        </div>
      ))}
      <p role="status">
        {given.length === 0
          ? now
            ? say(words.from, 'en', { code: now.code })
            : words.none
          : now
            ? say(words.nowOf, 'en', { code: now.code })
            : words.nowNone}
      </p>
      {past.map(({ id, code }) => (
        <p key={id} className="attention">
          {say(words.past, 'en', { code })}
        </p>
      ))}
      <div className="acts">
        {isFree && (
          <Tap look="plain" onTap={() => choose({ given, now: last })}>
            {say(words.last, 'en', { code: last.code })}
          </Tap>
        )}
        <Tap look="plain" onTap={onPick}>
          {now || isFree ? words.other : words.choose}
        </Tap>
        {now && typed !== null && given.length < mostGiven && (
          <Tap
            look="plain"
            onTap={() => {
              choose(withAnother(chosen, typed))
              onGiven()
            }}
          >
            {words.also}
          </Tap>
        )}
      </div>
    </div>
  )
}
