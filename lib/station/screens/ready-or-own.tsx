import { useDraft } from '../ui/use-draft'
import { Tap } from '../ui/tap'

const longest = 300

type ReadyOrOwnProps = {
  /** The common things to say, each at a tap. */
  ready: readonly string[]
  /** What the room for own words is called, and the tap that keeps them. */
  other: string
  keep: string
  /** Under what half-typed words are kept. */
  draft: string
  /** Nothing can be said yet. */
  isHeld?: boolean
  /** Stands on the common ones while the book is asked. */
  asking?: string | null
  onSay(text: string): void
}

/** What is common is said at a tap; anything else in own words. */
export function ReadyOrOwn({ ready, other, keep, draft, isHeld = false, asking = null, onSay }: ReadyOrOwnProps) {
  const { text, type } = useDraft(draft)
  const own = (text ?? '').trim()
  return (
    <>
      <ul className="rows">
        {ready.map((each) => (
          <li key={each}>
            <Tap look="row" disabled={isHeld || asking !== null} onTap={() => onSay(each)}>
              {asking ?? each}
            </Tap>
          </li>
        ))}
      </ul>
      <label>
        {other}
        <input
          className="line"
          value={text ?? ''}
          maxLength={longest}
          autoComplete="off"
          onChange={({ target }) => type(target.value)}
        />
      </label>
      <Tap look="plain" disabled={isHeld || asking !== null || own === ''} onTap={() => onSay(own)}>
        {keep}
      </Tap>
    </>
  )
}
