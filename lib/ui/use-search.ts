'use client'

import { useEffect, useRef, useState } from 'react'
import type { Choice, Find, Found, SearchValue } from './search'

type Question<Option extends Choice> = {
  value: SearchValue
  find: Find<Option>
  onChange: (value: SearchValue, chosen: Option | null) => void
}

export type Search<Option extends Choice> = {
  isOpen: boolean
  /** Null until the first answer, and while none comes. */
  found: Found<Option> | null
  /** Place of the option that the arrow keys are on, -1 for none. */
  active: number
  fault: 'nobody' | 'failed' | null
  type(text: string): void
  open(from: 'field' | 'arrow'): void
  close(): void
  move(by: 1 | -1): void
  choose(option: Option): void
  clear(): void
  /** Looks whether what was typed is somebody's whole name, and chooses that one; whatever else it is, is said. */
  settle(): void
}

/** Waits so long after a key before it asks. */
const askAfterMs = 150

/** What is typed, asked and chosen in a field that is searched. Nothing is chosen by guess: only an option, or a whole name. */
export function useSearch<Option extends Choice>({ value, find, onChange }: Question<Option>): Search<Option> {
  const [isOpen, setOpen] = useState(false)
  const [found, setFound] = useState<Found<Option> | null>(null)
  const [active, setActive] = useState(-1)
  const [fault, setFault] = useState<Search<Option>['fault']>(null)
  const asked = useRef<AbortController | null>(null)
  const timer = useRef<ReturnType<typeof setTimeout> | null>(null)

  function forget(): void {
    if (timer.current !== null) clearTimeout(timer.current)
    asked.current?.abort()
  }

  async function ask(part: string, then: (answer: Found<Option>) => void): Promise<void> {
    forget()
    const asking = (asked.current = new AbortController())
    try {
      const answer = await find(part, asking.signal)
      if (asking.signal.aborted) return
      setFault((before) => (before === 'failed' ? null : before))
      then(answer)
    } catch {
      if (asking.signal.aborted) return
      setFound(null)
      setFault('failed')
    }
  }

  function choose(option: Option): void {
    forget()
    setOpen(false)
    setActive(-1)
    setFault(null)
    onChange({ id: option.id, text: option.name }, option)
  }

  function settle(): void {
    if (value.id !== '' || value.text.trim() === '') {
      forget()
      return
    }
    void ask(value.text, ({ named }) => (named ? choose(named) : setFault('nobody')))
  }

  // What a draft or a refused form gives back may be a name that was never looked up.
  const settleOnce = useRef(settle)
  useEffect(() => {
    settleOnce.current()
    return () => forget()
  }, [])

  return {
    isOpen,
    found,
    active,
    fault,
    type(text) {
      setOpen(true)
      setActive(-1)
      setFault(null)
      onChange({ id: '', text }, null)
      forget()
      timer.current = setTimeout(() => void ask(text, setFound), askAfterMs)
    },
    open(from) {
      if (!isOpen) {
        setOpen(true)
        setFound(null)
        // A name that was chosen is no part to look for: all the others are wanted.
        void ask(value.id === '' ? value.text : '', setFound)
      }
      setActive(from === 'arrow' ? 0 : -1)
    },
    close() {
      setOpen(false)
      setActive(-1)
    },
    move(by) {
      const length = found?.options.length ?? 0
      if (length > 0) setActive((at) => (at === -1 && by === -1 ? length - 1 : (at + by + length) % length))
    },
    choose,
    clear() {
      forget()
      setFault(null)
      onChange({ id: '', text: '' }, null)
    },
    settle,
  }
}
