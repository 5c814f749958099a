'use client'

import { useEffect, useLayoutEffect, useRef, type RefObject } from 'react'
import { say } from '../words/say'
import type { Words } from '../words/words'
import type { Choice } from './search'
import type { Search } from './use-search'

type SearchListProps<Option extends Choice> = {
  id: string
  label: string
  /** The field that it belongs to, below or above which it stands. */
  anchor: RefObject<HTMLElement | null>
  search: Search<Option>
  chosenId: string
  detailOf?: (option: Option) => string | null
  words: Words['desk']['drafts']['search']
  language: string
}

/** The list of a `SearchField`, over whatever the page has there, and how many more there are. */
export function SearchList<Option extends Choice>({
  id,
  label,
  anchor,
  search,
  chosenId,
  detailOf,
  words,
  language,
}: SearchListProps<Option>) {
  const { isOpen, found, active } = search
  const box = useRef<HTMLDivElement>(null)

  useLayoutEffect(() => {
    if (!isOpen) return
    const put = () => putBeside(box.current, anchor.current)
    put()
    addEventListener('scroll', put, true)
    addEventListener('resize', put)
    return () => {
      removeEventListener('scroll', put, true)
      removeEventListener('resize', put)
    }
  }, [isOpen, found, anchor])
  useEffect(() => {
    if (isOpen && active >= 0) document.getElementById(`${id}-${active}`)?.scrollIntoView({ block: 'nearest' })
  }, [isOpen, active, id, found])

  const state = isOpen ? stateOf(search, words, language) : ''
  return (
    <>
      <p role="status" className="sr-only">
        {state}
      </p>
      {isOpen ? (
        <div ref={box} className="fixed z-10 flex max-h-72 flex-col border border-line bg-sheet print:hidden">
          {found && found.options.length > 0 ? (
            // Focus stays in the field, from where the keys are heard.
            <div
              id={id}
              role="listbox"
              tabIndex={-1}
              aria-label={label}
              onMouseDown={(event) => event.preventDefault()}
              className="overflow-y-auto overscroll-contain"
            >
              {found.options.map((option, index) => {
                const detail = detailOf?.(option)
                return (
                  // eslint-disable-next-line jsx-a11y/click-events-have-key-events -- the keys are the field's, as the pattern has it
                  <div
                    key={option.id}
                    id={`${id}-${index}`}
                    role="option"
                    tabIndex={-1}
                    aria-selected={option.id === chosenId}
                    onClick={() => search.choose(option)}
                    className={`min-h-11 cursor-pointer px-2.5 py-2.5 text-control hover:bg-band ${index === active ? 'bg-band outline-2 -outline-offset-2 outline-focus' : ''} ${option.id === chosenId ? 'font-bold' : ''}`}
                  >
                    {option.name}
                    {detail ? <span className="block text-small font-normal text-ink-2">{detail}</span> : null}
                  </div>
                )
              })}
            </div>
          ) : null}
          {found && found.options.length === found.count && found.count > 0 ? null : (
            <p aria-hidden="true" className="border-t border-rule px-2.5 py-2 text-small text-ink-2">
              {state}
            </p>
          )}
        </div>
      ) : null}
    </>
  )
}

function stateOf<Option extends Choice>(
  { found, fault }: Search<Option>,
  words: SearchListProps<Option>['words'],
  language: string,
): string {
  if (fault === 'failed') return words.failed
  if (!found) return words.looking
  const more = found.count - found.options.length
  if (more > 0) return say(words.more, language, { count: more })
  return found.count === 0 ? words.none : say(words.all, language, { count: found.count })
}

/** Room that a list of a few lines needs, px. */
const leastRoom = 240

/** Below the field, or above it where there is more room; by script, since the page allows no style of its own. */
function putBeside(box: HTMLElement | null, field: HTMLElement | null): void {
  if (box === null || field === null) return
  const { left, right, top, bottom, width } = field.getBoundingClientRect()
  const below = innerHeight - bottom
  const isAbove = below < leastRoom && top > below
  const wide = Math.min(Math.max(width, 256), innerWidth)
  Object.assign(box.style, {
    width: `${wide}px`,
    left: `${Math.max(0, Math.min(left, innerWidth - wide))}px`,
    top: isAbove ? 'auto' : `${bottom}px`,
    bottom: isAbove ? `${innerHeight - top}px` : 'auto',
    // Scrolled out of sight with its field, inside a table that scrolls by itself.
    visibility: right < 0 || left > innerWidth || bottom < 0 || top > innerHeight ? 'hidden' : 'visible',
  })
}
