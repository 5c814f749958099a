import { say } from '../../words/say'
import { stationChecks as words } from '../../words/en/station-checks'
import { remember, type Kept } from '../keep/tablet'
import { checksOfDay } from '../outbox/checks-of-day'
import type { OutboxEntry } from '../outbox/entry'
import { Tap } from '../ui/tap'

type ChecksRowProps = { floor: Kept['floor']; entries: readonly OutboxEntry[]; now: number }

/** A quiet line that asks for the checks of the day, and says which failed. It holds nobody up. */
export function ChecksRow({ floor, entries, now }: ChecksRowProps) {
  const checks = checksOfDay(floor, entries, now)
  if (checks.length === 0) return null
  const named = (stand: string) => checks.filter((check) => check.stand === stand).map(({ name }) => name)
  const [toDo, failed] = [named('toDo'), named('failed')]
  return (
    <Tap look="row" onTap={() => void remember('checking', { instrumentId: null })}>
      <b>{words.title}</b>
      <span className="end">
        {toDo.length > 0 && say(words.toDo, 'en', { count: toDo.length, names: toDo })}
        {toDo.length === 0 && failed.length === 0 && words.done}
        {failed.length > 0 && <span className="attention due">{say(words.failed, 'en', { names: failed })}</span>}
      </span>
    </Tap>
  )
}
