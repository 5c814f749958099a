import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { listDecisions } from '@/lib/kitchen/decisions/list-decisions'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import type { Page } from '@/lib/kitchen/read-page'
import { EmptyState } from '@/lib/ui/empty-state'
import { LinkButton } from '@/lib/ui/link-button'
import { ListFoot } from '@/lib/ui/list-foot'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { DecisionTable, type DecisionRow } from './decision-table'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).decisions.title }
}

export default async function DecisionsPage({
  searchParams,
}: {
  searchParams: Promise<Record<string, string | string[] | undefined>>
}) {
  const { after } = await searchParams
  const language = await currentLanguage()
  const words = wordsIn(language)
  const { decisions: text, desk } = words
  const { bakery } = await ask(getDesk)
  const { waiting, signed, kept, takenBack } = await ask(listDecisions, { after })
  const sections: { id: string; title: string; none: string; page: Page<DecisionRow> }[] = [
    { id: 'waiting', title: text.waiting, none: text.waitingNone, page: waiting },
    { id: 'signed', title: text.signed, none: text.signedNone, page: signed },
    { id: 'kept', title: text.kept, none: text.keptNone, page: kept },
    { id: 'taken-back', title: text.takenBack, none: text.takenBackNone, page: takenBack },
  ]
  const isEmpty = sections.every(({ page }) => page.count === 0)
  return (
    <Sheet
      kicker={text.title}
      headline={waiting.count === 0 ? text.headlineNone : say(text.headline, language, { count: waiting.count })}
      margin={{
        label: text.about,
        entries: [
          { term: text.waiting, detail: waiting.count, strong: true },
          { term: text.how, detail: text.howText },
          { term: text.looking, detail: text.lookingText },
        ],
      }}
    >
      {isEmpty ? (
        <EmptyState sentence={text.empty}>
          <LinkButton tone="plain" href="/trials">
            {text.toTrials}
          </LinkButton>
        </EmptyState>
      ) : (
        sections.map(({ id, title, none, page }) => (
          <Section key={id} id={id} title={title}>
            {page.count === 0 ? (
              <EmptyState sentence={none} />
            ) : (
              <>
                <DecisionTable
                  caption={title}
                  decisions={page.rows}
                  words={words}
                  bakery={bakery}
                  language={language}
                />
                <ListFoot page={page} list={title} address="/decisions" anchor={id} words={desk} language={language} />
              </>
            )}
          </Section>
        ))
      )}
    </Sheet>
  )
}
