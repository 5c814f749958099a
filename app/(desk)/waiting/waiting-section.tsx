import { PageLink } from '@/lib/ui/page-link'
import { Fragment } from 'react'
import { Cell } from '@/lib/ui/cell'
import { EmptyState } from '@/lib/ui/empty-state'
import { GroupRow } from '@/lib/ui/group-row'
import { Notice } from '@/lib/ui/notice'
import { Section } from '@/lib/ui/section'
import { SheetTable } from '@/lib/ui/sheet-table'
import { formatDateTime } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { waitingGroups, type Waiting } from './waiting-groups'

type WaitingSectionProps = {
  waiting: Waiting
  words: Words
  bakery: { locale: string; timeZone: string }
  language: Language
}

/** What waits for whoever reads the page, at its top; a line where nothing does. */
export function WaitingSection({ waiting, words, bakery, language }: WaitingSectionProps) {
  const { waiting: text } = words.desk
  const { brokenRecord, notAnchored } = waiting
  const groups = waitingGroups(waiting, { words, bakery, language })
  const columns = [
    { key: 'what', label: text.what },
    { key: 'about', label: text.about },
    { key: 'since', label: text.since },
  ]
  return (
    <Section id="waits-for-you" title={text.title} screenOnly>
      {brokenRecord ? (
        <Notice tone="stop" word={words.desk.attention}>
          {say(text.record[brokenRecord.why], language, {
            date: formatDateTime(brokenRecord.at, bakery),
            number: brokenRecord.number,
          })}{' '}
          <PageLink href="/team/record?check=all">{text.toRecord}</PageLink>
        </Notice>
      ) : null}
      {notAnchored ? (
        <Notice tone="warn" word={words.desk.attention}>
          {say(text.notAnchored, language, { date: formatDateTime(notAnchored.at, bakery) })}{' '}
          <PageLink href="/team/record#jobs">{text.toRecord}</PageLink>
        </Notice>
      ) : null}
      {groups.length === 0 ? (
        <EmptyState sentence={text.nothing} />
      ) : (
        <SheetTable caption={text.title} captionHidden columns={columns}>
          {groups.map(({ id, title, rows, more }) => (
            <Fragment key={id}>
              <GroupRow label={title} columns={columns.length} />
              {rows.map(({ href, what, about, since }) => (
                <tr key={`${href} ${what}`}>
                  <Cell head>
                    <PageLink href={href} className="block py-1.5">
                      {what}
                    </PageLink>
                  </Cell>
                  <Cell>{about}</Cell>
                  <Cell whole>{since}</Cell>
                </tr>
              ))}
              {more ? (
                <tr>
                  <td colSpan={columns.length}>
                    <PageLink href={more.href} className="inline-block py-1.5 text-small">
                      {more.label}
                    </PageLink>
                  </td>
                </tr>
              ) : null}
            </Fragment>
          ))}
        </SheetTable>
      )}
    </Section>
  )
}
