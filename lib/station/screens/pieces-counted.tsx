import { say } from '../../words/say'
import { station } from '../../words/en/station'
import { stationCounts as words } from '../../words/en/station-counts'
import type { FloorDough } from '../keep/facts'
import { openDough } from '../keep/tablet'
import { countOfDough } from '../outbox/count-of-dough'
import type { OutboxEntry } from '../outbox/entry'
import { shownTime } from '../ui/figures'
import { saidOfCount } from '../ui/said-of-count'
import { Tap } from '../ui/tap'

type PiecesCountedProps = {
  dough: FloorDough
  entries: readonly OutboxEntry[]
  aheadMs: number
  locale: string
  timeZone: string
}

/** How many pieces a dough made and what became of them, as it was counted last; a tap counts again. */
export function PiecesCounted({ dough, entries, aheadMs, ...clock }: PiecesCountedProps) {
  const count = countOfDough(dough, entries, aheadMs)
  return (
    <section>
      <h2>{words.title}</h2>
      <div className="rows">
        <Tap look="row" onTap={() => void openDough(dough.id, { count: true })}>
          <b>{words.go}</b>
          <span className="end">
            {count === null
              ? words.none
              : saidOfCount(count).map((said) => (
                  <span key={said} className="due">
                    {said}
                  </span>
                ))}
            {count && (
              <small>
                {say(words.byAt, 'en', { who: count.who, at: shownTime(count.at, clock) })}
                <br />
                {station.states[count.state]}
              </small>
            )}
          </span>
        </Tap>
      </div>
    </section>
  )
}
