'use client'

import { useEffect, useRef, useState } from 'react'
import { isFormBegun } from '@/lib/ui/is-form-begun'
import { keepCurrent } from '@/lib/ui/keep-current'
import { PressButton } from '@/lib/ui/press-button'
import type { Words } from '@/lib/words/words'
import { lookAgain } from './look-again'

type KeepCurrentProps = {
  /** How far the record went when the page was made. */
  seen: number
  words: Words['desk']['live']
}

/**
 * Keeps the page it stands on as the book is, as long as somebody looks at it. Under the hands of whoever fills in a form
 * nothing changes: they are told, and a form that is sent says itself where somebody else was faster.
 */
export function KeepCurrent({ seen, words }: KeepCurrentProps) {
  const [isBehind, setBehind] = useState(false)
  const shown = useRef(seen)
  useEffect(() => {
    shown.current = seen
  }, [seen])
  useEffect(
    () =>
      keepCurrent(
        () => `/api/live?seen=${shown.current}`,
        async (isTold) => {
          const waits = [...document.forms].some(isFormBegun)
          if (waits && isTold) setBehind(true)
          if (waits) return false
          await lookAgain()
          setBehind(false)
          return true
        },
      ),
    [],
  )
  useEffect(() => {
    // What somebody types in stays in sight above the notice (the room for it is in globals.css).
    if (isBehind) document.activeElement?.scrollIntoView({ block: 'nearest' })
  }, [isBehind])
  const show = () => {
    setBehind(false)
    // Without an answer the page stays as it is, and is asked again.
    lookAgain().catch(() => setBehind(true))
  }
  return (
    <div role="status" data-behind={isBehind || undefined} className="sticky bottom-0 z-10 print:hidden">
      {isBehind ? (
        <div className="flex flex-wrap items-center gap-x-4 gap-y-2 border-t-2 border-ink bg-paper py-3">
          <p className="max-w-measure font-semibold">{words.changed}</p>
          <PressButton tone="plain" onPress={show}>
            {words.show}
          </PressButton>
        </div>
      ) : null}
    </div>
  )
}
