import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { listChecks } from '@/lib/kitchen/checks/list-checks'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { EmptyState } from '@/lib/ui/empty-state'
import { FloorLink } from '@/lib/ui/floor-link'
import { FloorSheet } from '@/lib/ui/floor-sheet'
import { ListFoot } from '@/lib/ui/list-foot'
import { Section } from '@/lib/ui/section'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { KeepCurrent } from '../../keep-current'
import { CheckForm } from './check-form'
import { CheckList } from './check-list'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).checks.title }
}

export default async function ChecksPage({
  searchParams,
}: {
  searchParams: Promise<Record<string, string | string[] | undefined>>
}) {
  const { after } = await searchParams
  const language = await currentLanguage()
  const words = wordsIn(language)
  const { checks: text, desk } = words
  const [{ bakery, record }, { instruments, checks }] = await Promise.all([ask(getDesk), ask(listChecks, { after })])
  const toDo = instruments.filter(({ last }) => !last?.isToday).length
  const failed = instruments.filter(({ last }) => last?.isGood === false).length

  return (
    <FloorSheet
      headline={
        instruments.length === 0
          ? text.headlineNone
          : failed > 0
            ? say(text.headlineFailed, language, { count: failed })
            : toDo > 0
              ? say(text.headline, language, { count: toDo })
              : text.headlineDone
      }
      under={text.lead}
    >
      <div className="mt-4 print:hidden">
        <FloorLink href="/shift">{text.toShift}</FloorLink>
      </div>
      <Section id="instruments" title={text.title}>
        {instruments.length === 0 ? (
          <EmptyState sentence={text.none} />
        ) : (
          instruments.map((instrument) => (
            <CheckForm key={instrument.id} instrument={instrument} bakery={bakery} words={words} language={language} />
          ))
        )}
      </Section>
      <Section id="checks" title={text.list}>
        {checks.count === 0 ? (
          <p className="text-ink-2">{text.listNone}</p>
        ) : (
          <>
            <CheckList checks={checks.rows} bakery={bakery} text={text} language={language} />
            <ListFoot
              page={checks}
              list={text.list}
              address="/shift/checks"
              anchor="checks"
              onFloor
              words={desk}
              language={language}
            />
          </>
        )}
      </Section>
      <KeepCurrent seen={record.number} words={desk.live} />
    </FloorSheet>
  )
}
