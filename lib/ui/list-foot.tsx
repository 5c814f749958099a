import { say } from '../words/say'
import type { Language, Words } from '../words/words'
import { FloorLink } from './floor-link'
import { LinkButton } from './link-button'

export type ListFootProps = {
  page: { rows: readonly unknown[]; count: number; after: string | null; isFirst: boolean }
  /** What the list is called, for whoever hears the links without seeing what they stand under. */
  list: string
  /** The page that the list is on, and the list's own anchor on it. */
  address: string
  anchor: string
  /** For floury hands. */
  onFloor?: boolean
  words: Words['desk']
  language: Language
}

/** The foot of a list: how many there are, how many of them stand here, and the way to the others. */
export function ListFoot({ page, list, address, anchor, onFloor = false, words, language }: ListFootProps) {
  const { lists: text } = words
  const shown = page.rows.length
  const Way = onFloor ? FloorLink : PlainLink
  return (
    <div className="mt-2.5 flex flex-wrap items-center gap-x-4 gap-y-2 print:mt-1">
      <p className={onFloor ? 'text-lead' : 'text-small text-ink-2'}>
        {shown === page.count
          ? say(text.all, language, { count: page.count })
          : say(text.some, language, { shown, count: page.count })}
      </p>
      {page.after === null && page.isFirst ? null : (
        <nav aria-label={say(text.ways, language, { list })} className="flex flex-wrap items-center gap-3.5">
          {page.after === null ? null : <Way href={`${address}?after=${page.after}#${anchor}`}>{text.next}</Way>}
          {page.isFirst ? null : <Way href={`${address}#${anchor}`}>{text.first}</Way>}
        </nav>
      )}
    </div>
  )
}

function PlainLink({ href, children }: { href: string; children: string }) {
  return (
    <LinkButton tone="plain" href={href}>
      {children}
    </LinkButton>
  )
}
