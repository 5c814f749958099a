import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { listWaiting } from '@/lib/kitchen/desk/list-waiting'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { listTrials } from '@/lib/kitchen/trials/list-trials'
import { EmptyState } from '@/lib/ui/empty-state'
import { LinkButton } from '@/lib/ui/link-button'
import { ListFoot } from '@/lib/ui/list-foot'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { KeepCurrent } from '../keep-current'
import { WaitingSection } from '../waiting/waiting-section'
import { TrialTable } from './trial-table'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).trials.title }
}

export default async function TrialsPage({
  searchParams,
}: {
  searchParams: Promise<Record<string, string | string[] | undefined>>
}) {
  const { after } = await searchParams
  const language = await currentLanguage()
  const { trials: text, decisions, desk } = wordsIn(language)
  const [{ bakery, record }, { waiting, baking, sentBack, drafts, past, mayPropose }, waitsForReader] =
    await Promise.all([ask(getDesk), ask(listTrials, { after }), ask(listWaiting)])
  const sections = [
    { id: 'waiting', title: text.waiting, none: text.waitingNone, page: waiting },
    { id: 'baking', title: text.baking, none: text.bakingNone, page: baking },
    // What was sent back waits for its writer, so it comes before what nobody has asked for yet.
    { id: 'sent-back', title: text.sentBack, none: text.sentBackNone, page: sentBack },
    { id: 'drafts', title: text.drafts, none: text.draftsNone, page: drafts },
    { id: 'past', title: text.past, none: text.pastNone, page: past },
  ]
  return (
    <Sheet
      kicker={text.title}
      headline={waiting.count === 0 ? text.headlineNone : say(text.headline, language, { count: waiting.count })}
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
          { term: text.waiting, detail: waiting.count, strong: true },
          { term: text.baking, detail: baking.count },
          { term: text.how, detail: text.howText },
          { term: text.rights, detail: text.rightsText },
        ],
      }}
    >
      <WaitingSection waiting={waitsForReader} words={wordsIn(language)} bakery={bakery} language={language} />
      {sections.map(({ id, title, none, page }) => (
        <Section key={id} id={id} title={title}>
          {page.count === 0 ? (
            <EmptyState sentence={none} />
          ) : (
            <>
              <TrialTable
                caption={title}
                trials={page.rows}
                text={text}
                decisions={decisions}
                bakery={bakery}
                language={language}
              />
              <ListFoot page={page} list={title} address="/trials" anchor={id} words={desk} language={language} />
            </>
          )}
        </Section>
      ))}
      <KeepCurrent seen={record.number} words={desk.live} />
    </Sheet>
  )
}
