import type { ReactNode } from 'react'
import { FloorLink } from '@/lib/ui/floor-link'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { byline } from '../byline'

/** A note as it is shown. */
export type ShownNote = {
  id: string
  text: string
  who: string
  takenAt: Date
  receivedAt: Date
  batch: { id: string; code: string } | null
  trialNumber: number | null
}

type NoteListProps<Note extends ShownNote> = {
  notes: readonly Note[]
  /** Left out where all are of one dough. */
  hidesDough?: boolean
  /** What stands behind the byline. */
  after?: (note: Note) => ReactNode
  bakery: { locale: string; timeZone: string }
  text: Words['notes']
  language: Language
}

/** Notes with who wrote them and when, and of which dough. */
export function NoteList<Note extends ShownNote>(q: NoteListProps<Note>) {
  const { notes, hidesDough = false, after, bakery, text, language } = q
  return (
    <ul className="max-w-column border-t-2 border-ink">
      {notes.map((note) => (
        <li key={note.id} className="grid gap-1 border-b border-rule py-3">
          <p className="max-w-measure text-lead break-words whitespace-pre-line">{note.text}</p>
          <p className="text-ink-2">
            {byline(note, bakery, text, language)}
            {note.batch === null && note.trialNumber !== null ? (
              <span className="ml-4">{say(text.ofTrial, language, { number: note.trialNumber })}</span>
            ) : null}
          </p>
          <div className="flex flex-wrap items-center gap-x-4 gap-y-2">
            {after?.(note)}
            {note.batch !== null && !hidesDough ? (
              <FloorLink href={`/shift/${note.batch.id}`}>
                {say(text.ofDough, language, { code: note.batch.code })}
              </FloorLink>
            ) : null}
          </div>
        </li>
      ))}
    </ul>
  )
}
