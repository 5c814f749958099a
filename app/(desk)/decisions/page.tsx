import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { listDecisions } from '@/lib/kitchen/decisions/list-decisions'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { EmptyState } from '@/lib/ui/empty-state'
import { LinkButton } from '@/lib/ui/link-button'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { DecisionTable, type DecisionRow } from './decision-table'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).decisions.title }
}

export default async function DecisionsPage() {
  const language = await currentLanguage()
  const words = wordsIn(language)
  const { decisions: text } = words
  const { bakery } = await ask(getDesk)
  const { waiting, signed, kept, takenBack } = await ask(listDecisions)
  const sections: { id: string; title: string; none: string; decisions: readonly DecisionRow[] }[] = [
    { id: 'waiting', title: text.waiting, none: text.waitingNone, decisions: waiting },
    { id: 'signed', title: text.signed, none: text.signedNone, decisions: signed },
    { id: 'kept', title: text.kept, none: text.keptNone, decisions: kept },
    { id: 'taken-back', title: text.takenBack, none: text.takenBackNone, decisions: takenBack },
  ]
  const isEmpty = sections.every(({ decisions }) => decisions.length === 0)
  return (
    <Sheet
      kicker={text.title}
      headline={waiting.length === 0 ? text.headlineNone : say(text.headline, language, { count: waiting.length })}
      margin={{
        label: text.about,
        entries: [
          { term: text.waiting, detail: waiting.length, strong: true },
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
        sections.map(({ id, title, none, decisions }) => (
          <Section key={id} id={id} title={title}>
            {decisions.length === 0 ? (
              <EmptyState sentence={none} />
            ) : (
              <DecisionTable caption={title} decisions={decisions} words={words} bakery={bakery} language={language} />
            )}
          </Section>
        ))
      )}
    </Sheet>
  )
}
