import type { ReactNode } from 'react'

export type SectionProps = {
  /** Also the section's anchor. */
  id: string
  title: string
  /** How to read what follows, in small type behind the title. */
  note?: ReactNode
  /** Not printed: a form, a tool. */
  screenOnly?: boolean
  children: ReactNode
}

/** A part of a sheet: a fine rule, its title, what belongs to it. */
export function Section({ id, title, note, screenOnly = false, children }: SectionProps) {
  const titleId = `${id}-title`
  return (
    <section
      id={id}
      aria-labelledby={titleId}
      className={`mt-9 border-t border-rule pt-3 print:mt-5 print:pt-2 ${screenOnly ? 'print:hidden' : ''}`}
    >
      <div className="mb-3 flex flex-wrap items-baseline gap-x-4 print:mb-1.5 print:break-after-avoid">
        <h2 id={titleId} className="text-control font-bold">
          {title}
        </h2>
        {note ? <p className="text-small text-ink-2">{note}</p> : null}
      </div>
      {children}
    </section>
  )
}
