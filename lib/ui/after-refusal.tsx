'use client'

import { use, type ReactNode } from 'react'
import { ActionFormContext } from './action-form-context'

/** What only a form that was refused asks for: whoever sees it always would tick it always. */
export function AfterRefusal({ children }: { children: ReactNode }) {
  const { state } = use(ActionFormContext)
  return state.refusal === null ? null : children
}
