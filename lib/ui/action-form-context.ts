'use client'

import { createContext, use } from 'react'
import { emptyFormState, type FormState } from './form-state'

type ActionFormValue = { state: FormState; pending: boolean; idPrefix: string }

export const ActionFormContext = createContext<ActionFormValue>({ state: emptyFormState, pending: false, idPrefix: '' })

/** What the form around a field knows of it. */
export function useFormField(name: string): { id: string; typed: string | undefined; error: string | undefined } {
  const { state, idPrefix } = use(ActionFormContext)
  return { id: `${idPrefix}${name}`, typed: state.values[name], error: state.problems[name] }
}
