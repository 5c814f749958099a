import { Cell } from '@/lib/ui/cell'
import { Lines } from '@/lib/ui/lines'
import { Section } from '@/lib/ui/section'
import { SheetTable } from '@/lib/ui/sheet-table'
import { formatDateTime } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import { wordsIn, type Language } from '@/lib/words/words'
import type { ShownBakery } from '../shown-result'
import { sayAmendment, sayLate, sayVerdict } from './say-amendment'
import type { ShownAmendments } from './shown-amendments'

type AmendmentsProps = { amended: ShownAmendments; bakery: ShownBakery; language: Language }

/** What came after the closing, old beside new, with who and why. */
export function AmendmentsSection({ amended, bakery, language }: AmendmentsProps) {
  const { amendments: text } = wordsIn(language)
  const { amendments, unread } = amended
  if (amendments.length + unread === 0) return null
  return (
    <Section
      id="amendments"
      title={text.title}
      note={amendments.length > 0 ? say(text.note, language, { count: amendments.length }) : undefined}
    >
      {amendments.length > 0 ? <AmendmentTable amended={amended} bakery={bakery} language={language} /> : null}
      {unread > 0 ? <p className="mt-3 max-w-measure">{say(text.unread, language, { count: unread })}</p> : null}
    </Section>
  )
}

function AmendmentTable({ amended, bakery, language }: AmendmentsProps) {
  const { amendments: text } = wordsIn(language)
  return (
    <SheetTable
      caption={text.title}
      captionHidden
      columns={[
        { key: 'dough', label: text.dough },
        { key: 'of', label: text.of },
        { key: 'closed', label: text.closed, numeric: true },
        { key: 'should-be', label: text.shouldBe, numeric: true },
        { key: 'who', label: text.who },
        { key: 'why', label: text.why },
        { key: 'second', label: text.secondPerson },
      ]}
    >
      {amended.amendments.map((amendment) => {
        const { id, change, by, at, reason } = amendment
        const said = sayAmendment(amendment, language)
        return (
          <tr key={id}>
            <Cell head>{change.dough.code}</Cell>
            <Cell>
              <Lines texts={said.of} />
            </Cell>
            <Cell numeric>{said.old}</Cell>
            <Cell numeric>
              <Lines texts={[said.new, ...(said.moved === null ? [] : [said.moved])]} />
            </Cell>
            <Cell>{say(text.whoAt, language, { who: by, at: formatDateTime(at, bakery) })}</Cell>
            <Cell>
              <Lines texts={[...(reason === null ? [] : [reason]), ...sayLate(amendment, bakery, language)]} />
            </Cell>
            <Cell>
              <Lines texts={sayVerdict(amendment, bakery, language)} />
            </Cell>
          </tr>
        )
      })}
    </SheetTable>
  )
}
