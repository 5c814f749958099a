'use client'

import { usePathname } from 'next/navigation'
import { use, useEffect, useRef, useState, type RefObject } from 'react'
import { DraftOwnerContext } from './draft-owner'
import { draftKey, dropDraft, keepDraft, readDraft, type KeptDraft } from './kept-drafts'
import { typedIn } from './typed-in'

type FormDraft = {
  /** What was put back into the fields, and how often: fields made anew take it up. */
  values: Readonly<Record<string, string>> | null
  round: number
  /** When what was put back had been typed; null where the fields are as the page gives them. */
  at: string | null
  /** A draft of a page that has changed since, to be put back or thrown away. */
  offered: KeptDraft | null
  putBack(): void
  startAfresh(): void
  /** The form was done, also where it leads to another page: nothing of it is kept any more. */
  drop(): void
}

type Question = {
  form: RefObject<HTMLFormElement | null>
  idPrefix: string
  formId: { current: string | null }
  /** The fields as the page gives them, read before this hook's own effects. */
  given: RefObject<Readonly<Record<string, string>> | null>
  /** How often the form was done: each time it is one as the page gives it again. */
  doneCount: number
  onPutBack?: (values: Readonly<Record<string, string>> | null) => void
}

/** Waits so long after a key before it writes. */
const writeAfterMs = 250

/**
 * Keeps what is typed into a form in this browser, for the person who types it: over a reload, another page and a crash.
 * It comes back by itself where the page gives the form as it did then; otherwise it is offered, because something else has
 * changed meanwhile.
 * @param onPutBack told what was put back, null for the form as the page gives it, where the form has state of its own
 */
export function useFormDraft({ form, idPrefix, formId, given, doneCount, onPutBack }: Question): FormDraft {
  const owner = use(DraftOwnerContext)
  const personId = owner?.personId ?? null
  const path = usePathname()
  const key = personId === null ? null : draftKey(personId, path, idPrefix)
  const [shown, setShown] = useState<{
    values: FormDraft['values']
    round: number
    at: string | null
    offered: KeptDraft | null
  }>({ values: null, round: 0, at: null, offered: null })
  const isOver = useRef(false)
  const told = useRef(onPutBack)
  useEffect(() => {
    told.current = onPutBack
  })

  function put(draft: KeptDraft | null): void {
    formId.current = draft?.formId ?? null
    told.current?.(draft?.values ?? null)
    setShown(({ round }) => ({ values: draft?.values ?? null, round: round + 1, at: draft?.at ?? null, offered: null }))
  }

  useEffect(() => {
    const fields = form.current
    if (key === null || fields === null) return
    const asGiven = JSON.stringify(given.current)
    let timer: ReturnType<typeof setTimeout> | null = null
    isOver.current = false

    const write = () => {
      if (timer !== null) clearTimeout(timer)
      timer = null
      if (isOver.current) return
      const values = typedIn(new FormData(fields))
      if (JSON.stringify(values) === asGiven) dropDraft(localStorage, key)
      else {
        formId.current ??= crypto.randomUUID()
        keepDraft(localStorage, key, { at: new Date().toISOString(), formId: formId.current, given: asGiven, values })
      }
    }
    const soon = () => {
      if (timer !== null) clearTimeout(timer)
      timer = setTimeout(write, writeAfterMs)
    }
    const flush = () => {
      if (timer !== null) write()
    }
    const events = ['input', 'change', 'click'] as const
    for (const event of events) fields.addEventListener(event, soon)
    addEventListener('pagehide', flush)

    const kept = doneCount === 0 ? readDraft(localStorage, key, new Date()) : null
    if (kept) {
      if (kept.given === asGiven) put(kept)
      else setShown((now) => ({ ...now, offered: kept }))
    }
    return () => {
      flush()
      for (const event of events) fields.removeEventListener(event, soon)
      removeEventListener('pagehide', flush)
    }
    // Once for a form as the page gives it.
  }, [key, doneCount])

  return {
    ...shown,
    putBack: () => put(shown.offered),
    startAfresh() {
      if (key !== null) dropDraft(localStorage, key)
      put(null)
    },
    drop() {
      isOver.current = true
      if (key !== null) dropDraft(localStorage, key)
      setShown(({ round }) => ({ values: null, round, at: null, offered: null }))
    },
  }
}
