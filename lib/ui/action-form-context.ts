'use client'

import { createContext, use, useEffect } from 'react'
import { emptyFormState, type FormState } from './form-state'

type ActionFormValue = {
  state: FormState
  pending: boolean
  idPrefix: string
  /** Labels of the fields by their id, so that the summary can name the field that a fault belongs to. */
  labels: Map<string, string>
}

export const ActionFormContext = createContext<ActionFormValue>({ state: emptyFormState, pending: false, idPrefix: '', labels: new Map() })

/**
 * What the form around a field knows of it.
 * @param label the field's own label, by which the summary at the form's top calls it
 */
export function useFormField(name: string, label?: string): { id: string; typed: string | undefined; error: string | undefined } {
  const { state, idPrefix, labels } = use(ActionFormContext)
  const id = `${idPrefix}${name}`
  useEffect(() => {
    if (label !== undefined) labels.set(id, label)
  }, [labels, id, label])
  return { id, typed: state.values[name], error: state.problems[name] }
}
