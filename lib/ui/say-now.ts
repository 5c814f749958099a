import { say } from '../words/say'
import type { Words } from '../words/words'

/** What stands in the book now for a field: a text as it is read, whether its box is ticked, or nothing. */
export function sayNow(shown: string | boolean | undefined, words: Words['desk']['drafts'], language: string): string {
  if (typeof shown === 'boolean') return shown ? words.nowTicked : words.nowNotTicked
  return shown ? say(words.now, language, { value: shown }) : words.nowNothing
}
