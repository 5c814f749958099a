import { PageLink } from './page-link'
import type { ReactNode } from 'react'

export type RackSlot = {
  key: string
  href: string
  code: string
  state: ReactNode
  /** What else to know, in small words. */
  remarks: readonly string[]
  /** The one to begin next, in ember; `nextWord` says it too. */
  nextWord?: string
  isCurrent?: boolean
}

/** Batches as trolleys in a rack: code, state, what is next. Beside a batch they stand in one row or column. */
export function Rack({
  label,
  slots,
  beside = false,
}: {
  label: string
  slots: readonly RackSlot[]
  beside?: boolean
}) {
  return (
    <ul
      aria-label={label}
      className={
        beside
          ? 'flex flex-wrap border-t-2 border-ink wide:block'
          : 'grid grid-cols-2 border-t-2 border-ink mid:grid-cols-3 wide:grid-cols-4'
      }
    >
      {slots.map((slot) => (
        <li key={slot.key} className={beside ? 'grow border-b-2 border-rule' : 'border-b-2 border-rule'}>
          <PageLink
            href={slot.href}
            aria-current={slot.isCurrent ? 'page' : undefined}
            className={`block h-full border-l-8 no-underline hover:bg-band aria-[current=page]:bg-sheet ${beside ? 'min-h-14 px-3 py-1.5 wide:py-3' : 'min-h-28 px-4 py-3'} ${slot.nextWord ? 'border-ember' : slot.isCurrent ? 'border-ink' : 'border-transparent'}`}
          >
            <span className={`block font-bold ${beside ? 'text-lead' : 'text-figure'}`}>{slot.code}</span>
            <span className="block">{slot.state}</span>
            {slot.nextWord ? <span className="block font-semibold text-ember">{slot.nextWord}</span> : null}
            {slot.remarks.map((remark) => (
              <span key={remark} className="block text-small text-ink-2">
                {remark}
              </span>
            ))}
          </PageLink>
        </li>
      ))}
    </ul>
  )
}
