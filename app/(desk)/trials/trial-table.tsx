import { PageLink } from '@/lib/ui/page-link'
import type { Standing } from '@/lib/kitchen/trials/rules'
import { Cell } from '@/lib/ui/cell'
import { SheetTable } from '@/lib/ui/sheet-table'
import { formatDate } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { addressOfTrial } from './address-of-trial'
import { TrialState } from './trial-state'

type Row = {
  id: string
  number: number
  standing: Standing
  opensOn: 'plan' | 'result'
  question: string
  formula: string
  proposedBy: string
  isMine: boolean
  doughs: number
  createdAt: Date
  proposedAt: Date | null
  closedAt: Date | null
  decision: { id: string; outcome: keyof Words['decisions']['outcomes'] } | null
}

type TrialTableProps = {
  caption: string
  trials: readonly Row[]
  text: Words['trials']
  decisions: Words['decisions']
  bakery: { locale: string; timeZone: string }
  language: Language
}

/** Trials, one a row. */
export function TrialTable({ caption, trials, text, decisions, bakery, language }: TrialTableProps) {
  return (
    <SheetTable
      caption={caption}
      captionHidden
      columns={[
        { key: 'number', label: text.number, numeric: true },
        { key: 'question', label: text.question },
        { key: 'formula', label: text.formula },
        { key: 'doughs', label: text.doughs, numeric: true },
        { key: 'by', label: text.by },
        { key: 'since', label: text.since },
        { key: 'state', label: text.state },
      ]}
    >
      {trials.map((trial) => (
        <tr key={trial.id}>
          <Cell numeric>{trial.number}</Cell>
          <Cell head>
            <PageLink href={addressOfTrial(trial)} className="block py-1.5">
              {trial.question}
            </PageLink>
          </Cell>
          <Cell>{trial.formula}</Cell>
          <Cell numeric>{trial.doughs}</Cell>
          <Cell>{trial.isMine ? say(text.mine, language, { name: trial.proposedBy }) : trial.proposedBy}</Cell>
          <Cell whole>{formatDate(trial.closedAt ?? trial.proposedAt ?? trial.createdAt, bakery)}</Cell>
          <Cell whole>
            <TrialState standing={trial.standing} text={text} />
            {trial.decision ? (
              <PageLink href={`/decisions/${trial.decision.id}`} className="block py-1 text-small">
                {decisions.outcomes[trial.decision.outcome]}
              </PageLink>
            ) : null}
          </Cell>
        </tr>
      ))}
    </SheetTable>
  )
}
