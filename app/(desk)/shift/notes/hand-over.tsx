import type { listHandOver } from '@/lib/kitchen/notes/list-hand-over'
import type { AnswerOf } from '@/lib/kitchen/query'
import { ActionForm } from '@/lib/ui/action-form'
import { FloorButton } from '@/lib/ui/floor-button'
import { Section } from '@/lib/ui/section'
import { formatDateTime } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { read } from './actions'
import { NoteList } from './note-list'

type HandOverProps = {
  notes: AnswerOf<typeof listHandOver>['notes']
  bakery: { locale: string; timeZone: string }
  words: Pick<Words, 'notes'>
  language: Language
}

/** What the shift before left for this one, until somebody has read it. */
export function HandOver({ notes, bakery, words, language }: HandOverProps) {
  const { notes: text } = words
  if (notes.length === 0) return null
  return (
    <Section id="hand-over" title={text.handOver}>
      <NoteList
        notes={notes}
        bakery={bakery}
        text={text}
        language={language}
        after={({ id, who, receivedAt, isOwn }) =>
          isOwn ? (
            <p className="text-ink-2">{text.own}</p>
          ) : (
            <ActionForm action={read.bind(null, id)} idPrefix={`read-${id}-`}>
              <FloorButton
                tone="plain"
                fullLabel={say(text.readFull, language, { who, at: formatDateTime(receivedAt, bakery) })}
              >
                {text.read}
              </FloorButton>
            </ActionForm>
          )
        }
      />
    </Section>
  )
}
