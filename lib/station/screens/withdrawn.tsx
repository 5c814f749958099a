import { say } from '../../words/say'
import { station as words } from '../../words/en/station'
import type { OutboxEntry } from '../outbox/entry'
import { Tap } from '../ui/tap'

/** The desk has shut this tablet out: what lies on it stays, and it says so. */
export function Withdrawn({ entries, onAgain }: { entries: readonly OutboxEntry[]; onAgain(): void }) {
  const count = entries.filter(({ state }) => state === 'waiting' || state === 'attention').length
  return (
    <div className="narrow">
      <h1>{words.withdrawn.title}</h1>
      <p>{words.withdrawn.why}</p>
      {count > 0 && <p>{say(words.withdrawn.kept, 'en', { count })}</p>}
      <Tap look="plain" onTap={onAgain}>
        {words.withdrawn.again}
      </Tap>
    </div>
  )
}
