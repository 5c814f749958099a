import type { ReactNode } from 'react'

/** Nothing here yet: says so in a sentence, and offers the next thing to do (a button or link as children). */
export function EmptyState({ sentence, children }: { sentence: string; children?: ReactNode }) {
  return (
    <div className="border-y border-dashed border-line py-6">
      <p className="max-w-measure text-lead text-ink-2">{sentence}</p>
      {children ? <div className="mt-4 flex flex-wrap items-center gap-3.5 print:hidden">{children}</div> : null}
    </div>
  )
}
