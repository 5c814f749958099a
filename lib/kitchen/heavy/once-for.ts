import 'server-only'

/**
 * Keeps what was worked out of a thing for as long as that thing is kept: the same thing is not worked out again, and what
 * came of it is the same thing again, so that what is kept for that is found too. The thing never changes.
 */
export function onceFor<Answer>(): (thing: object, work: () => Answer) => Answer {
  const kept = new WeakMap<object, { answer: Answer }>()
  return (thing, work) => {
    const known = kept.get(thing) ?? { answer: work() }
    kept.set(thing, known)
    return known.answer
  }
}
