'use client'

import { createContext, useMemo, type ReactNode } from 'react'
import type { Words } from '../words/words'

export type Owner = { personId: string; words: Words['desk']['drafts']; language: string; locale: string }

/** Whose drafts the forms around it keep; null where nobody is signed in, and nothing is kept then. */
export const DraftOwnerContext = createContext<Owner | null>(null)

/** Lets every form within keep what this person types, until it is sent or they sign out. */
export function DraftOwner({ personId, words, language, locale, children }: Owner & { children: ReactNode }) {
  const owner = useMemo(() => ({ personId, words, language, locale }), [personId, words, language, locale])
  return <DraftOwnerContext value={owner}>{children}</DraftOwnerContext>
}
