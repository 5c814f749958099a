import 'server-only'
import { hashOfText } from './hash-of-text'

/** Most documents of one kind that this process keeps as read, those that were asked for last. */
const mostKept = 100

/**
 * Reads each text once, however many pages ask for it: a schema takes far longer for a document than a hash. What comes
 * back is shared by all who ask, so nobody can change it.
 * @param read of a text alone, the same each time
 */
export function keepRead<Read extends object>(read: (text: string) => Read): (text: string) => Read {
  const kept = new Map<string, Read>()
  return (text) => {
    const hash = hashOfText(text)
    const found = kept.get(hash) ?? frozen(read(text))
    kept.delete(hash)
    kept.set(hash, found)
    const [oldest] = kept.keys()
    if (kept.size > mostKept && oldest !== undefined) kept.delete(oldest)
    return found
  }
}

function frozen<Value>(value: Value): Value {
  if (typeof value === 'object' && value !== null) Object.values(Object.freeze(value)).forEach(frozen)
  return value
}
