import type { ReactNode } from 'react'

/** The foot of a sheet or form: what can be done next, the likeliest first. Not printed. */
export function ActionRow({ children }: { children: ReactNode }) {
  return (
    <div className="mt-7 flex flex-wrap items-center gap-3.5 border-t-[1.5px] border-ink pt-4 print:hidden">
      {children}
    </div>
  )
}
