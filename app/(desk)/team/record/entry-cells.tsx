import type { listRecord } from '@/lib/kitchen/audit/list-record'
import type { AnswerOf } from '@/lib/kitchen/query'
import { Cell } from '@/lib/ui/cell'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { describeValue } from './describe-value'
import { sayWhat } from './say-what'
import { sayWho } from './say-who'

type EntryCellsProps = {
  said: AnswerOf<typeof listRecord>['entries']['rows'][number]['said']
  words: Words
  language: Language
}

/** Who, what, and before and after of one entry; of one that cannot be read, that. */
export function EntryCells({ said, words, language }: EntryCellsProps) {
  const { audit: text } = words
  if (said.outcome === 'unknown-format')
    return <Unreadable sentence={say(text.unread['unknown-format'], language, { format: said.format })} />
  if (said.outcome === 'damaged') return <Unreadable sentence={text.unread.damaged} />
  const { who, action, before, after, reason } = said
  return (
    <>
      <Cell>{sayWho(who, words, language)}</Cell>
      <Cell>{sayWhat(action, who, words)}</Cell>
      <Cell>
        {before === null ? null : <p>{say(text.before, language, { text: describeValue(before) })}</p>}
        {after === null ? null : <p>{say(text.after, language, { text: describeValue(after) })}</p>}
        {reason === null ? null : <p>{say(text.reason, language, { text: reason })}</p>}
      </Cell>
    </>
  )
}

function Unreadable({ sentence }: { sentence: string }) {
  return (
    <>
      <Cell />
      <Cell />
      <Cell>{sentence}</Cell>
    </>
  )
}
