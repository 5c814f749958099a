'use client'

import { use, type ReactNode } from 'react'
import { ActionFormContext } from './action-form-context'
import { DraftOwnerContext } from './draft-owner'
import { sayNow } from './say-now'

/**
 * A field's hint, and what stands in the book now where somebody else changed it while this form was open.
 * @param present what the page gives the field
 * @param shown the same as it is read, where that is another text; of a box whether it is ticked
 * @param absent what it means that the form sent no such field, where that says something: no tick, no choice
 */
export function useChangedHint(
  name: string,
  hint: ReactNode,
  present: string | undefined,
  shown: string | boolean | undefined = present,
  absent?: string,
): ReactNode {
  const { state } = use(ActionFormContext)
  const owner = use(DraftOwnerContext)
  const was = state.given ? (state.given[name] ?? absent) : undefined
  if (owner === null || was === undefined || was === (present ?? '')) return hint
  return (
    <>
      {hint}
      <strong className="block text-ink">{sayNow(shown, owner.words, owner.language)}</strong>
    </>
  )
}
