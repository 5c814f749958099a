import type { ReactNode } from 'react'
import type { Entry } from './definition-list'

export type SheetProps = {
  /** What the page is about, in the margin; it moves above the headline on a narrow screen. */
  margin?: { label: string; entries: readonly Entry[] }
  /** The page's name, run into the headline. */
  kicker?: string
  headline: string
  lead?: ReactNode
  /** What most people come here to do, or the ways to what the page waits for, under the headline. Not printed. */
  actions?: ReactNode
  children: ReactNode
}

/** A desk page as a specification sheet: the margin, then the headline that says the state of things, then the rest. */
export function Sheet({ margin, kicker, headline, lead, actions, children }: SheetProps) {
  return (
    <div className="mx-auto max-w-page gap-x-10 px-5 py-6 print:py-2 wide:grid wide:grid-cols-[13rem_minmax(0,1fr)] wide:px-8 wide:py-8 print:block print:px-0">
      {margin ? (
        <aside
          aria-label={margin.label}
          className="mb-6 border-b border-rule pb-5 print:mb-3 print:pb-2 wide:mb-0 wide:border-0 wide:pt-2 wide:pb-0"
        >
          <dl className="grid grid-cols-2 gap-x-5 gap-y-3.5 mid:grid-cols-3 wide:grid-cols-1 print:grid-cols-3">
            {margin.entries.map((entry) => (
              <div key={entry.term}>
                <dt className="text-small text-ink-2">{entry.term}</dt>
                <dd className={entry.strong ? 'font-bold' : undefined}>{entry.detail}</dd>
              </div>
            ))}
          </dl>
        </aside>
      ) : null}
      <div className="min-w-0 wide:col-start-2">
        <h1 className="text-head font-semibold">
          {kicker ? (
            <>
              <span className="font-normal text-ink-2">{kicker}</span>
              {gap}
            </>
          ) : null}
          {headline}
        </h1>
        {lead ? <p className="mt-3 max-w-measure text-lead">{lead}</p> : null}
        {actions ? <div className="mt-4 flex flex-wrap items-center gap-3.5 print:hidden">{actions}</div> : null}
        {children}
      </div>
    </div>
  )
}

/** An en space: the kicker stands apart, and the line may still break there. */
const gap = '\u2002'
