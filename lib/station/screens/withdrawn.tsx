import { say } from '../../words/say'
import { station as words } from '../../words/en/station'
import { Tap } from '../ui/tap'

/** The desk has shut this tablet out: what lies on it stays, and it says so. */
export function Withdrawn({ kept, onAgain }: { kept: readonly { state: string }[]; onAgain(): void }) {
  const count = kept.filter(({ state }) => state === 'waiting' || state === 'attention').length
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
