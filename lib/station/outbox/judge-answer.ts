import type { OutboxEntry } from './entry'

/** What came back: a status and whatever JSON stood in the body; null for no answer, or one that is no JSON. */
export type Answer = { status: number; body: unknown } | null

/** What an entry becomes by an answer. */
export type Settled = { id: string } & Pick<OutboxEntry, 'state' | 'refusal' | 'words' | 'faults'>

export type Judged =
  /** Some entries have an answer of their own; the rest wait on. */
  | { outcome: 'answered'; settled: Settled[] }
  /** The book wants to know who this is. */
  | { outcome: 'who' }
  /** Nobody knows whether it is in the book: the same is to be sent again. */
  | { outcome: 'again' }

type Sent = Pick<OutboxEntry, 'id' | 'hash'>

/**
 * What the book's answer makes of what was sent. An entry is let go of only where its id and its own hash come back, kept
 * or aside; a refusal of its own puts it before a person; anything else (a page of a hotel's network, an error, half an
 * answer) leaves it where it is.
 */
export function judgeAnswer(sent: readonly Sent[], answer: Answer, unreadable: string): Judged {
  if (!answer || answer.status >= 500 || answer.status === 429 || !isObject(answer.body)) return { outcome: 'again' }
  const { status, body } = answer
  if (!Array.isArray(body.entries)) {
    if (body.refusal === 'not-signed-in' || body.refusal === 'not-allowed') return { outcome: 'who' }
    const isOurs = typeof body.refusal === 'string' && (status === 400 || status === 413 || status === 422)
    if (!isOurs) return { outcome: 'again' }
    const words = typeof body.words === 'string' ? body.words : unreadable
    return {
      outcome: 'answered',
      settled: sent.map(({ id }) => ({ id, state: 'attention', refusal: String(body.refusal), words })),
    }
  }
  const answers: unknown[] = body.entries
  const settled = sent.flatMap((entry, at): Settled[] => settledBy(entry, answers[at], unreadable))
  if (settled.length > 0) return { outcome: 'answered', settled }
  return answers.some((each) => isObject(each) && each.refusal === 'not-allowed')
    ? { outcome: 'who' }
    : { outcome: 'again' }
}

function settledBy({ id, hash }: Sent, answer: unknown, unreadable: string): Settled[] {
  if (!isObject(answer) || answer.id !== id) return []
  const words = typeof answer.words === 'string' ? answer.words : null
  switch (answer.outcome) {
    case 'kept':
      return answer.hash === hash ? [{ id, state: 'book', refusal: null, words: null }] : []
    case 'aside':
      return answer.hash === hash ? [{ id, state: 'aside', refusal: null, words }] : []
    case 'refused':
      return typeof answer.refusal === 'string' && answer.refusal !== 'not-allowed'
        ? [{ id, state: 'attention', refusal: answer.refusal, words: words ?? unreadable, ...faultsIn(answer) }]
        : []
    default:
      return []
  }
}

function faultsIn({ problems }: Record<string, unknown>): Pick<OutboxEntry, 'faults'> {
  const faults = isObject(problems) ? Object.values(problems).filter((each) => typeof each === 'string') : []
  return faults.length > 0 ? { faults } : {}
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null
}
