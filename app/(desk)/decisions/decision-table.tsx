import { PageLink } from '@/lib/ui/page-link'
import { Cell } from '@/lib/ui/cell'
import { SheetTable } from '@/lib/ui/sheet-table'
import { formatDate, formatDateTime } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { neededKey, type NeededKey } from '@/lib/words/needed-key'
import { sayDecision } from './say-decision'

export type DecisionRow = {
  id: string
  number: number
  reason: string
  at: Date
  decidedBy: string
  arm: string | null
  version: { number: number; effectiveAt: Date | null } | null
  trialNumber: number
  formula: string
  takenBackWhy: string | null
  /** Only of those that wait. */
  missing?: readonly Exclude<NeededKey, 'both'>[]
}

type DecisionTableProps = {
  caption: string
  decisions: readonly DecisionRow[]
  words: Words
  bakery: { locale: string; timeZone: string }
  language: Language
}

/** Decisions, one a row. */
export function DecisionTable({ caption, decisions, words, bakery, language }: DecisionTableProps) {
  const { decisions: text } = words
  return (
    <SheetTable
      caption={caption}
      captionHidden
      columns={[
        { key: 'number', label: text.number, numeric: true },
        { key: 'what', label: text.what },
        { key: 'why', label: text.why },
        { key: 'by', label: text.by },
        { key: 'standing', label: text.standing },
      ]}
    >
      {decisions.map((decision) => (
        <tr key={decision.id}>
          <Cell numeric>{decision.number}</Cell>
          <Cell head>
            <PageLink href={`/decisions/${decision.id}`} className="block min-w-short py-1.5">
              {sayDecision({ ...decision, versionNumber: decision.version?.number ?? null }, text, language)}
            </PageLink>
            <span className="block text-small font-normal text-ink-2">
              {say(text.trialShort, language, { number: decision.trialNumber })}
            </span>
          </Cell>
          <Cell>
            <span className="block min-w-short whitespace-pre-line">{decision.reason}</span>
          </Cell>
          <Cell>
            {decision.decidedBy}
            <span className="block text-small whitespace-nowrap text-ink-2">{formatDate(decision.at, bakery)}</span>
          </Cell>
          <Cell>
            <span className="block min-w-short">{standingOf(decision)}</span>
          </Cell>
        </tr>
      ))}
    </SheetTable>
  )

  function standingOf({ missing, takenBackWhy, version }: DecisionRow): string {
    const needed = missing && neededKey(missing)
    if (needed) return text.missing[needed]
    if (takenBackWhy !== null) return takenBackWhy
    return version?.effectiveAt
      ? say(text.since, language, { number: version.number, at: formatDateTime(version.effectiveAt, bakery) })
      : text.states.kept
  }
}
