import type { Metadata } from 'next'
import { ask, askUnless } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { compareAnchors } from '@/lib/kitchen/audit/compare-anchors'
import { listRecord } from '@/lib/kitchen/audit/list-record'
import { verifyRecord } from '@/lib/kitchen/audit/verify-record'
import { listJobs } from '@/lib/kitchen/jobs/list-jobs'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { ActionRow } from '@/lib/ui/action-row'
import { Cell } from '@/lib/ui/cell'
import { LinkButton } from '@/lib/ui/link-button'
import { ListFoot } from '@/lib/ui/list-foot'
import { Notice } from '@/lib/ui/notice'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { SheetTable } from '@/lib/ui/sheet-table'
import { formatDateTime } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { AnchorSection } from './anchor-section'
import { AnchorsSection } from './anchors-section'
import { EntryCells } from './entry-cells'
import { JobsSection } from './jobs-section'
import { sayLastCheck } from './say-last-check'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).audit.title }
}

export default async function RecordPage({
  searchParams,
}: {
  searchParams: Promise<Record<string, string | string[] | undefined>>
}) {
  const { after, check, entry, hash } = await searchParams
  const language = await currentLanguage()
  const words = wordsIn(language)
  const { audit: text, desk, people } = words
  const { bakery } = await ask(getDesk)
  const [{ entries, fault: faultOfPage }, { jobs, lastCheck }] = await Promise.all([
    ask(listRecord, { after }),
    ask(listJobs),
  ])
  // The whole chain takes the longer the older the bakery is, so it is followed when somebody asks for it.
  const anchor = typeof entry === 'string' && typeof hash === 'string' ? { number: entry, hash } : undefined
  const asked = check === 'all' || anchor ? await askUnless(verifyRecord, { anchor }, ['invalid']) : null
  const anchors = check === 'anchors' ? await ask(compareAnchors) : null
  const whole = asked?.ok ? asked.value : null
  const fault = whole?.fault ?? faultOfPage

  return (
    <Sheet
      kicker={text.title}
      headline={say(text.headline, language, { count: entries.count })}
      margin={{
        label: text.about,
        entries: [
          { term: text.kept, detail: text.keptText },
          { term: text.lastCheck, detail: sayLastCheck(lastCheck, text, bakery, language) },
        ],
      }}
    >
      {fault?.why === 'unknown-format' ? (
        <Notice tone="warn" word={desk.attention}>
          {say(text.unknownFormat, language, { number: fault.number })}
        </Notice>
      ) : fault ? (
        <Notice tone="stop" word={desk.attention}>
          {say(text.wholeNo[fault.why], language, { number: fault.number })}
        </Notice>
      ) : (
        <Notice tone="ok" word={text.whole}>
          {whole ? text.wholeYes : text.pageYes}
        </Notice>
      )}
      <AnchorSection
        typed={anchor}
        outcome={asked === null ? null : asked.ok ? asked.value.anchor : 'invalid'}
        text={text.anchor}
        attention={desk.attention}
        language={language}
      />
      <AnchorsSection
        found={anchors}
        text={text.anchors}
        attention={desk.attention}
        bakery={bakery}
        language={language}
      />
      <Section id="entries" title={text.entries}>
        <SheetTable
          caption={text.entries}
          captionHidden
          columns={[
            { key: 'number', label: text.number, numeric: true },
            { key: 'at', label: text.at },
            { key: 'who', label: text.who },
            { key: 'what', label: text.what },
            { key: 'detail', label: text.detail },
          ]}
        >
          {entries.rows.map((entry) => (
            <tr key={entry.number}>
              <Cell numeric>{entry.number}</Cell>
              <Cell whole>{formatDateTime(entry.at, bakery)}</Cell>
              <EntryCells said={entry.said} words={words} language={language} />
            </tr>
          ))}
        </SheetTable>
        <ListFoot
          page={entries}
          list={text.entries}
          address="/team/record"
          anchor="entries"
          words={desk}
          language={language}
        />
      </Section>
      <JobsSection jobs={jobs} text={text} bakery={bakery} />
      <ActionRow>
        {whole ? null : (
          <LinkButton tone="plain" href="/team/record?check=all">
            {text.checkAll}
          </LinkButton>
        )}
        <LinkButton tone="plain" href="/team">
          {people.person.back}
        </LinkButton>
      </ActionRow>
    </Sheet>
  )
}
