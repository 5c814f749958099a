'use client'

import { usePathname } from 'next/navigation'
import { use, useEffect, useEffectEvent } from 'react'
import { DraftOwnerContext } from './draft-owner'
import { draftKey, readDraft } from './kept-drafts'

/** When the page opens, tells of the first of some places for which something that was typed is kept in this browser. */
export function useFirstKept(names: readonly string[], onFound: (name: string) => void): void {
  const personId = use(DraftOwnerContext)?.personId ?? null
  const path = usePathname()
  const look = useEffectEvent(() => {
    const found = names.find(
      (name) => personId !== null && readDraft(localStorage, draftKey(personId, path, name), new Date()) !== null,
    )
    if (found !== undefined) onFound(found)
  })
  useEffect(() => {
    look()
  }, [])
}
