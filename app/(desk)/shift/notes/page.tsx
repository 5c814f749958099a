import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { listNotes } from '@/lib/kitchen/notes/list-notes'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { EmptyState } from '@/lib/ui/empty-state'
import { FloorLink } from '@/lib/ui/floor-link'
import { FloorSheet } from '@/lib/ui/floor-sheet'
import { ListFoot } from '@/lib/ui/list-foot'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { NoteForm } from './note-form'
import { NoteList } from './note-list'
import { NoteMarks } from './note-marks'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).notes.title }
}

export default async function NotesPage({
  searchParams,
}: {
  searchParams: Promise<Record<string, string | string[] | undefined>>
}) {
  const { after } = await searchParams
  const language = await currentLanguage()
  const words = wordsIn(language)
  const { notes: text, desk } = words
  const [{ bakery }, page] = await Promise.all([ask(getDesk), ask(listNotes, { batchId: null, after })])
  return (
    <FloorSheet
      headline={page.count === 0 ? text.headlineEmpty : say(text.headline, language, { count: page.count })}
      under={text.lead}
    >
      <div className="mt-4 print:hidden">
        <FloorLink href="/shift">{text.toShift}</FloorLink>
      </div>
      <div className="mt-6" id="notes">
        {page.count === 0 ? (
          <EmptyState sentence={text.noneAtAll} />
        ) : (
          <>
            <NoteList
              notes={page.rows}
              bakery={bakery}
              text={text}
              language={language}
              after={(note) => <NoteMarks note={note} text={text} language={language} />}
            />
            <ListFoot
              page={page}
              list={text.title}
              address="/shift/notes"
              anchor="notes"
              onFloor
              words={desk}
              language={language}
            />
          </>
        )}
      </div>
      <div className="mt-6">
        <NoteForm batchId={null} words={words} />
      </div>
    </FloorSheet>
  )
}
