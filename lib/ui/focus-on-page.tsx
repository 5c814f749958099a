'use client'

import { usePathname, useSearchParams } from 'next/navigation'
import { useEffect, useRef } from 'react'
import { focusHeading } from './focus-next'

/**
 * On each new page of the desk the focus goes to its headline, unless the page has put it on what comes next itself. Where
 * only a list went on to its next ones, it goes to the head of that list, from where the next key leads to the first new thing.
 */
export function FocusOnPage() {
  const path = usePathname()
  const after = useSearchParams().get('after')
  const shown = useRef({ path, after })
  useEffect(() => {
    const before = shown.current
    if (before.path === path && before.after === after) return
    shown.current = { path, after }
    // The link that led on still has the focus: it stands there again, below what is new.
    // On the way back the browser then goes to the address's anchor by itself, and that takes the focus off.
    if (before.path === path) requestAnimationFrame(() => focusHeading(headOfList() ?? headOfPage()))
    else if (!document.activeElement?.closest('main')) focusHeading(headOfPage())
  }, [path, after])
  return null
}

function headOfPage(): HTMLElement | null {
  return document.querySelector<HTMLElement>('main h1')
}

/** Of the list that the address names. */
function headOfList(): HTMLElement | null {
  return document.getElementById(location.hash.slice(1))?.querySelector<HTMLElement>('h2') ?? null
}
