'use client'

import { usePathname } from 'next/navigation'
import { use, useEffect, useMemo, useRef } from 'react'
import { DraftOwnerContext } from './draft-owner'
import { draftKey, dropDraft, keepDraft, readDraft, type KeptDraft } from './kept-drafts'

export type KeptTyped = {
  /** @param given what the page showed beside it, in one text */
  keep(values: Record<string, string>, given: string): void
  drop(): void
}

/**
 * Keeps in this browser what somebody types where no action form is, for them alone, over a reload, another page and a crash.
 * @param name of the place on its page
 * @param onBack told once what is kept there when the page opens
 */
export function useKeptTyped(name: string, onBack: (draft: KeptDraft) => void): KeptTyped {
  const personId = use(DraftOwnerContext)?.personId ?? null
  const path = usePathname()
  const told = useRef(onBack)
  useEffect(() => {
    told.current = onBack
  })
  useEffect(() => {
    const draft = personId === null ? null : readDraft(localStorage, draftKey(personId, path, name), new Date())
    if (draft) told.current(draft)
  }, [personId, path, name])
  return useMemo(
    () => ({
      keep(values, given) {
        if (personId === null) return
        const draft = { at: new Date().toISOString(), formId: null, given, values }
        keepDraft(localStorage, draftKey(personId, path, name), draft)
      },
      drop() {
        if (personId !== null) dropDraft(localStorage, draftKey(personId, path, name))
      },
    }),
    [personId, path, name],
  )
}
