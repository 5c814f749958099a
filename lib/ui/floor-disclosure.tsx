import type { ReactNode, Ref } from 'react'

/** A part that opens at a tap; its whole head is the target. */
export function FloorDisclosure({
  title,
  note,
  open = false,
  ref,
  children,
}: {
  title: string
  note?: ReactNode
  open?: boolean
  ref?: Ref<HTMLDetailsElement>
  children: ReactNode
}) {
  return (
    <details ref={ref} open={open} className="group border-b-2 border-rule">
      <summary className="flex min-h-14 flex-wrap items-center gap-x-4 py-2 text-lead font-semibold print:min-h-0 print:py-1">
        <svg
          viewBox="0 0 16 16"
          aria-hidden="true"
          className="size-4 shrink-0 fill-none stroke-current stroke-2 group-open:rotate-90 print:hidden"
        >
          <path d="M5 2l6 6-6 6" />
        </svg>
        {title}
        {note ? <span className="text-body font-normal text-ink-2">{note}</span> : null}
      </summary>
      <div className="pb-5 print:pb-2">{children}</div>
    </details>
  )
}
