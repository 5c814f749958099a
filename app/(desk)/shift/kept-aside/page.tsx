import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { listKeptAside } from '@/lib/kitchen/readings/list-kept-aside'
import { EmptyState } from '@/lib/ui/empty-state'
import { FloorLink } from '@/lib/ui/floor-link'
import { FloorSheet } from '@/lib/ui/floor-sheet'
import { ListFoot } from '@/lib/ui/list-foot'
import { Section } from '@/lib/ui/section'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { KeptEntry } from './kept-entry'
import { keptAsideAnchor } from './kept-aside-anchor'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).shift.keptAside.title }
}

export default async function KeptAsidePage({
  searchParams,
}: {
  searchParams: Promise<Record<string, string | string[] | undefined>>
}) {
  const { after } = await searchParams
  const language = await currentLanguage()
  const words = wordsIn(language)
  const { keptAside: text, rack } = words.shift
  const [{ bakery }, entries] = await Promise.all([ask(getDesk), ask(listKeptAside, { after })])

  return (
    <FloorSheet
      headline={entries.count === 0 ? text.headlineNone : say(text.headline, language, { count: entries.count })}
      under={entries.count === 0 ? undefined : text.under}
    >
      <Section id="kept-aside" title={entries.count === 0 ? text.title : text.list}>
        {entries.count === 0 ? (
          <EmptyState sentence={text.empty}>
            <FloorLink href="/shift">{rack.all}</FloorLink>
          </EmptyState>
        ) : (
          <>
            <div>
              {entries.rows.map((entry) => (
                <KeptEntry
                  key={keptAsideAnchor(entry)}
                  entry={entry}
                  bakery={bakery}
                  words={words}
                  language={language}
                />
              ))}
            </div>
            <ListFoot
              page={entries}
              list={text.list}
              address="/shift/kept-aside"
              anchor="kept-aside"
              onFloor
              words={words.desk}
              language={language}
            />
            <div className="mt-6 print:hidden">
              <FloorLink href="/shift">{rack.all}</FloorLink>
            </div>
          </>
        )}
      </Section>
    </FloorSheet>
  )
}
