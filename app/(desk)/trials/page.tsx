import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { listTrials } from '@/lib/kitchen/trials/list-trials'
import { EmptyState } from '@/lib/ui/empty-state'
import { LinkButton } from '@/lib/ui/link-button'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { TrialTable } from './trial-table'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).trials.title }
}

export default async function TrialsPage() {
  const language = await currentLanguage()
  const { trials: text, decisions } = wordsIn(language)
  const { bakery } = await ask(getDesk)
  const { waiting, baking, drafts, past, mayPropose } = await ask(listTrials)
  const sections = [
    { id: 'waiting', title: text.waiting, none: text.waitingNone, trials: waiting },
    { id: 'baking', title: text.baking, none: text.bakingNone, trials: baking },
    { id: 'drafts', title: text.drafts, none: text.draftsNone, trials: drafts },
    { id: 'past', title: text.past, none: text.pastNone, trials: past },
  ]
  return (
    <Sheet
      kicker={text.title}
      headline={waiting.length === 0 ? text.headlineNone : say(text.headline, language, { count: waiting.length })}
      actions={
        mayPropose ? (
          <LinkButton tone="go" href="/trials/new">
            {text.add}
          </LinkButton>
        ) : undefined
      }
      margin={{
        label: text.about,
        entries: [
          { term: text.waiting, detail: waiting.length, strong: true },
          { term: text.baking, detail: baking.length },
          { term: text.how, detail: text.howText },
          { term: text.rights, detail: text.rightsText },
        ],
      }}
    >
      {sections.map(({ id, title, none, trials }) => (
        <Section key={id} id={id} title={title}>
          {trials.length === 0 ? <EmptyState sentence={none} /> : <TrialTable caption={title} trials={trials} text={text} decisions={decisions} bakery={bakery} language={language} />}
        </Section>
      ))}
    </Sheet>
  )
}
