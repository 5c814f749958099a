import { unstable_rethrow } from 'next/navigation'
import { desk } from '../words/en/desk'
import { awayDigest } from './away-digest'

/**
 * What to say of an action that did not answer, or broke: whether anything may have been kept. The server may be what
 * is away, so the words can't come from it in the reader's own language.
 * @throws the error itself where it is how the framework goes to another page
 */
export function wordsOfNoAnswer(error: unknown): string {
  unstable_rethrow(error)
  const { errors: text } = desk
  if (!(error instanceof Error)) return text.noAnswer
  if (error.message === awayDigest) return text.awayTyped
  const digest = 'digest' in error && typeof error.digest === 'string' ? error.digest : null
  return digest === null ? text.noAnswer : `${text.brokenTyped} ${text.reference}: ${digest}`
}
