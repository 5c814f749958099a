import type { ReactNode } from 'react'

/** Nothing here yet: says so in a sentence, and offers the next thing to do (a button or link as children). */
export function EmptyState({ sentence, children }: { sentence: string; children?: ReactNode }) {
  return (
    <div className="py-1">
      <p className="max-w-measure text-lead">{sentence}</p>
      {children ? <div className="mt-4 flex flex-wrap items-center gap-3.5 print:hidden">{children}</div> : null}
    </div>
  )
}
