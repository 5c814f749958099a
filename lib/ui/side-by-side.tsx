import type { ReactNode } from 'react'

/** Two sections beside each other where there is room, the first a little wider. */
export function SideBySide({ children }: { children: ReactNode }) {
  return (
    <div className="grid-cols-[minmax(0,1.25fr)_minmax(0,1fr)] items-start gap-x-12 wide:grid print:block">
      {children}
    </div>
  )
}
