'use client'

import { usePathname } from 'next/navigation'
import { useEffect, useRef } from 'react'
import { focusHeading } from './focus-next'

/** On each new page of the desk the focus goes to its headline, unless the page has put it on what comes next itself. */
export function FocusOnPage() {
  const path = usePathname()
  const shown = useRef(path)
  useEffect(() => {
    if (shown.current === path) return
    shown.current = path
    if (!document.activeElement?.closest('main')) focusHeading(document.querySelector<HTMLElement>('main h1'))
  }, [path])
  return null
}
