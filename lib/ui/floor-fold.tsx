'use client'

import { useEffect, useRef, useState, type ReactNode } from 'react'
import { FloorDisclosure } from './floor-disclosure'

/**
 * A part that is seldom opened and holds a form: its fields are made when it is opened first, and stay from then on. A page
 * with six of them would otherwise be half made of forms that nobody sees.
 */
export function FloorFold({ title, children }: { title: string; children: ReactNode }) {
  const [wasOpened, setOpened] = useState(false)
  const details = useRef<HTMLDetailsElement>(null)
  useEffect(() => {
    const fold = details.current
    const look = () => {
      if (fold?.open) setOpened(true)
    }
    // It may have been opened before the page's script was there.
    look()
    fold?.addEventListener('toggle', look)
    return () => fold?.removeEventListener('toggle', look)
  }, [])
  return (
    <FloorDisclosure ref={details} title={title}>
      {wasOpened ? children : null}
    </FloorDisclosure>
  )
}
