import type { AnswerOf } from '@/lib/kitchen/query'
import type { getDesk } from '@/lib/kitchen/people/get-desk'
import type { listStations } from '@/lib/kitchen/stations/list-stations'
import { ActionForm } from '@/lib/ui/action-form'
import { Cell } from '@/lib/ui/cell'
import { EmptyState } from '@/lib/ui/empty-state'
import { ListFoot } from '@/lib/ui/list-foot'
import { Section } from '@/lib/ui/section'
import { SheetTable } from '@/lib/ui/sheet-table'
import { StateWord } from '@/lib/ui/state-word'
import { SubmitButton } from '@/lib/ui/submit-button'
import { formatDateTime } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import { wordsIn, type Language } from '@/lib/words/words'
import { told, withdraw } from './actions'

type Bakery = AnswerOf<typeof getDesk>['bakery']
type Stations = AnswerOf<typeof listStations>['stations']

/** The tablets of the bakery: who drew them up, whether they work, and the way to withdraw one. */
export function TabletsSection({
  stations,
  bakery,
  language,
}: {
  stations: Stations
  bakery: Bakery
  language: Language
}) {
  const { stations: words, desk } = wordsIn(language)
  const { tablets: text } = words
  return (
    <Section id="tablets" title={text.title}>
      {stations.count === 0 ? (
        <EmptyState sentence={text.none} />
      ) : (
        <>
          <SheetTable
            caption={text.title}
            captionHidden
            columns={[
              { key: 'name', label: text.name },
              { key: 'state', label: text.state },
              { key: 'by', label: text.madeBy },
              { key: 'seen', label: text.lastSeen },
              { key: 'act', label: text.withdraw, screenOnly: true },
            ]}
          >
            {stations.rows.map((station) => (
              <TabletRow key={station.id} station={station} bakery={bakery} language={language} />
            ))}
          </SheetTable>
          <ListFoot
            page={stations}
            list={text.title}
            address="/stations"
            anchor="tablets"
            words={desk}
            language={language}
          />
        </>
      )}
    </Section>
  )
}

const levels = { enrolled: 4, waiting: 1, 'ran-out': 'off', withdrawn: 'off' } as const

function TabletRow({
  station,
  bakery,
  language,
}: {
  station: Stations['rows'][number]
  bakery: Bakery
  language: Language
}) {
  const { tablets: text } = wordsIn(language).stations
  const { id, name, state, madeAt, madeBy, withdrawnAt, withdrawnBy, lastSeenAt, isNews } = station
  return (
    <tr>
      <Cell head>{name}</Cell>
      <Cell>
        <StateWord word={text.states[state]} level={levels[state]} />
        {withdrawnAt && withdrawnBy ? (
          <span className="block text-small text-ink-2">
            {say(text.whoAt, language, { who: withdrawnBy.name, at: formatDateTime(withdrawnAt, bakery) })}
          </span>
        ) : null}
      </Cell>
      <Cell>{say(text.whoAt, language, { who: madeBy.name, at: formatDateTime(madeAt, bakery) })}</Cell>
      <Cell whole>{lastSeenAt ? formatDateTime(lastSeenAt, bakery) : text.never}</Cell>
      <Cell screenOnly>
        {state === 'withdrawn' ? null : (
          <ActionForm action={withdraw.bind(null, id)} idPrefix={`withdraw-${id}-`}>
            <SubmitButton tone="stop-quiet" fullLabel={say(text.withdrawFull, language, { name })}>
              {text.withdraw}
            </SubmitButton>
          </ActionForm>
        )}
        {isNews ? (
          <ActionForm action={told.bind(null, id)} idPrefix={`told-${id}-`}>
            <SubmitButton tone="plain" fullLabel={say(text.toldFull, language, { name })}>
              {text.told}
            </SubmitButton>
          </ActionForm>
        ) : null}
      </Cell>
    </tr>
  )
}
