import type { ReactNode } from 'react'

/** Fields under one another, evenly apart: the inside of a form. */
export function FieldStack({ children }: { children: ReactNode }) {
  return <div className="grid gap-5">{children}</div>
}
