import type { ReactNode } from 'react'

/** Two fields that belong together, beside each other where there is room: a figure and its source. */
export function FieldPair({ children }: { children: ReactNode }) {
  return (
    <div className="grid max-w-measure items-start gap-x-8 gap-y-3 mid:grid-cols-[13rem_minmax(0,1fr)]">{children}</div>
  )
}
