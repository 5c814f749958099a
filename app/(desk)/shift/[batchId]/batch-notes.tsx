import type { listNotes } from '@/lib/kitchen/notes/list-notes'
import type { AnswerOf } from '@/lib/kitchen/query'
import { ListFoot } from '@/lib/ui/list-foot'
import { Section } from '@/lib/ui/section'
import type { Language, Words } from '@/lib/words/words'
import { NoteForm } from '../notes/note-form'
import { NoteList } from '../notes/note-list'
import { NoteMarks } from '../notes/note-marks'

type BatchNotesProps = {
  batchId: string
  page: AnswerOf<typeof listNotes>
  bakery: { locale: string; timeZone: string }
  words: Pick<Words, 'notes' | 'desk'>
  language: Language
}

/** What was noted of one batch, and two taps to note something more, whatever became of it. */
export function BatchNotes({ batchId, page, bakery, words, language }: BatchNotesProps) {
  const { notes: text, desk } = words
  return (
    <Section id="notes" title={text.title} note={page.count === 0 ? text.none : undefined}>
      {page.count === 0 ? null : (
        <>
          <NoteList
            notes={page.rows}
            hidesDough
            bakery={bakery}
            text={text}
            language={language}
            after={(note) => <NoteMarks note={note} text={text} language={language} />}
          />
          <ListFoot
            page={page}
            list={text.title}
            address={`/shift/${batchId}`}
            anchor="notes"
            onFloor
            words={desk}
            language={language}
          />
        </>
      )}
      <div className="mt-4">
        <NoteForm key={page.count} batchId={batchId} words={words} />
      </div>
    </Section>
  )
}
