import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { listRecord } from '@/lib/kitchen/audit/list-record'
import { verifyRecord } from '@/lib/kitchen/audit/verify-record'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { ActionRow } from '@/lib/ui/action-row'
import { Cell } from '@/lib/ui/cell'
import { LinkButton } from '@/lib/ui/link-button'
import { Notice } from '@/lib/ui/notice'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { SheetTable } from '@/lib/ui/sheet-table'
import { formatDateTime } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { describeValue } from './describe-value'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).audit.title }
}

export default async function RecordPage({ searchParams }: { searchParams: Promise<Record<string, string | string[] | undefined>> }) {
  const { before, check } = await searchParams
  const language = await currentLanguage()
  const { audit: text, desk, people } = wordsIn(language)
  const { bakery } = await ask(getDesk)
  const { count, entries, olderBefore, fault: faultOfPage } = await ask(listRecord, before === undefined ? {} : { before: Number(before) })
  // The whole chain takes the longer the older the bakery is, so it is followed when somebody asks for it.
  const whole = check === 'all' ? await ask(verifyRecord) : null
  const fault = whole?.fault ?? faultOfPage
  const actions: Record<string, string> = text.actions
  const roles: Record<string, string> = desk.roles

  return (
    <Sheet
      kicker={text.title}
      headline={say(text.headline, language, { count })}
      margin={{ label: text.about, entries: [{ term: text.kept, detail: text.keptText }] }}
    >
      {fault ? (
        <Notice tone="stop" word={desk.attention}>
          {say(text.wholeNo, language, { number: fault.number, why: text.why[fault.why] })}
        </Notice>
      ) : (
        <Notice tone="ok" word={text.whole}>
          {whole ? text.wholeYes : text.pageYes}
        </Notice>
      )}
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
          {entries.map((entry) => (
            <tr key={entry.number}>
              <Cell numeric>{entry.number}</Cell>
              <Cell whole>{formatDateTime(entry.at, bakery)}</Cell>
              <Cell>{entry.who ? `${entry.who.name}, ${roles[entry.who.role] ?? entry.who.role}` : text.nobody}</Cell>
              <Cell>{actions[entry.action] ?? entry.action}</Cell>
              <Cell>
                {entry.before === null ? null : <p>{say(text.before, language, { text: describeValue(entry.before) })}</p>}
                {entry.after === null ? null : <p>{say(text.after, language, { text: describeValue(entry.after) })}</p>}
                {entry.reason === null ? null : <p>{say(text.reason, language, { text: entry.reason })}</p>}
              </Cell>
            </tr>
          ))}
        </SheetTable>
      </Section>
      <ActionRow>
        {olderBefore === null ? null : (
          <LinkButton tone="plain" href={`/team/record?before=${olderBefore}`}>
            {text.older}
          </LinkButton>
        )}
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
