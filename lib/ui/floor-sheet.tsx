import type { ReactNode } from 'react'

export type FloorSheetProps = {
  headline: string
  /** Behind the headline: the state. */
  state?: ReactNode
  under?: ReactNode
  /** Other batches, at the left, or above on a narrow screen. */
  rack?: ReactNode
  children: ReactNode
}

/** A page for the bench: large, one column, the rack beside it. */
export function FloorSheet({ headline, state, under, rack, children }: FloorSheetProps) {
  return (
    <div
      className={`mx-auto max-w-page px-5 py-4 wide:px-8 ${rack ? 'wide:grid wide:grid-cols-[13rem_minmax(0,1fr)] wide:gap-x-10' : ''}`}
    >
      {rack ? <div className="mb-5 print:hidden">{rack}</div> : null}
      <div className="min-w-0">
        <div className="flex flex-wrap items-baseline gap-x-6 gap-y-1">
          <h1 className="text-figure font-bold">{headline}</h1>
          {state ? <p className="text-lead">{state}</p> : null}
        </div>
        {under ? <p className="mt-1 text-ink-2">{under}</p> : null}
        {children}
      </div>
    </div>
  )
}
