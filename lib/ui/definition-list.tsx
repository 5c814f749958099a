import type { ReactNode } from 'react'

export type Entry = { term: string; detail: ReactNode; strong?: boolean }

/** Terms and what they are, line by line between fine rules. */
export function DefinitionList({ entries }: { entries: readonly Entry[] }) {
  return (
    <dl className="border-t border-rule mid:grid mid:grid-cols-[fit-content(13rem)_minmax(0,1fr)] mid:gap-x-6">
      {entries.map((entry) => (
        <div key={entry.term} className="border-b border-rule py-2 mid:col-span-2 mid:grid mid:grid-cols-subgrid">
          <dt className="text-small text-ink-2 mid:pt-0.5">{entry.term}</dt>
          <dd className={entry.strong ? 'font-bold' : undefined}>{entry.detail}</dd>
        </div>
      ))}
    </dl>
  )
}
