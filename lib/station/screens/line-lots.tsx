import { say } from '../../words/say'
import { stationLots as words } from '../../words/en/station-lots'
import type { LotOffered } from '../keep/weigh-facts'
import { typedLot, withAnother, withoutLot, type LotsChosen } from '../outbox/lots-of-line'
import { lotName } from '../ui/lot-name'
import { Tap } from '../ui/tap'

/** The book takes ten of a line. */
const mostGiven = 9

/** From which lots a line is weighed, and how that is changed. */
export type LotsOfPad = {
  chosen: LotsChosen
  choose(next: LotsChosen): void
  /** The one that is offered first; null where none is. */
  last: LotOffered | null
  /** Lots of whose labels there are photos on the tablet. */
  labels: readonly string[]
  /** Opens all that are offered. */
  onPick(): void
}

type LineLotsProps = LotsOfPad & {
  /** What the pad shows of the lot that is on the scale now; null for nothing. */
  typed: string | null
  shown(mass: string): string
  /** Whether the stores have lots of it: of water nobody asks. */
  isOffered: boolean
  /** Opens the camera for the label of a lot that nobody has written down. */
  onLabel(lot: LotOffered): void
  /** Takes what is typed away: it is of its lot. */
  onGiven(): void
}

/** Of which lot the line is, said at a tap; a sack that runs out in the middle has given its part, and another one the rest. */
export function LineLots(q: LineLotsProps) {
  const { chosen, choose, last, labels, onPick, typed, shown, isOffered, onLabel, onGiven } = q
  const { given, now } = chosen
  const past = [...given, ...(now ? [now] : [])].filter(({ isPast }) => isPast)
  const isFree = last !== null && now === null && given.every(({ id }) => id !== last.id)
  return (
    <div className="lots">
      {given.map(({ id, code, isToConfirm, mass }) => (
        <div key={id} className="given">
          <b>{say(words.gave, 'en', { mass: shown(mass), code: lotName({ code, isToConfirm }) })}</b>
          <Tap look="quiet" onTap={() => choose(withoutLot(chosen, id))}>
            {say(words.away, 'en', { code })}
          </Tap>
        </div>
      ))}
      <p role="status">
        {given.length === 0
          ? now
            ? say(words.from, 'en', { code: now.code })
            : isOffered && words.none
          : now
            ? say(words.nowOf, 'en', { code: now.code })
            : words.nowNone}
      </p>
      {past.map(({ id, code }) => (
        <p key={id} className="attention">
          {say(words.past, 'en', { code })}
        </p>
      ))}
      {now?.isToConfirm && <p>{say(words.toConfirm, 'en', { code: now.code })}</p>}
      <div className="acts">
        {now?.isToConfirm && (
          <Tap look="plain" onTap={() => onLabel(now)}>
            {labels.includes(typedLot(now.code).id) ? words.photoAgain : words.photo}
          </Tap>
        )}
        {isFree && (
          <Tap look="plain" onTap={() => choose({ given, now: last })}>
            {say(words.last, 'en', { code: lotName(last) })}
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
