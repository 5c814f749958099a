'use client'

import { createContext, use, useEffect } from 'react'
import { ruleOf, type FieldRule, type FieldRules } from './field-rules'
import { emptyFormState, type FormState } from './form-state'

type ActionFormValue = {
  state: FormState
  /** What stands in the fields instead of what the page gives: sent and refused, or put back from a draft. */
  typed: Readonly<Record<string, string>> | null
  pending: boolean
  /** What the command asks of its fields. */
  rules: FieldRules
  idPrefix: string
  /** Labels of the fields by their id, so that the summary can name the field that a fault belongs to. */
  labels: Map<string, string>
}

export const ActionFormContext = createContext<ActionFormValue>({
  state: emptyFormState,
  typed: null,
  pending: false,
  rules: {},
  idPrefix: '',
  labels: new Map(),
})

/**
 * What the form around a field knows of it.
 * @param label the field's own label, by which the summary at the form's top calls it
 */
export function useFormField(
  name: string,
  label?: string,
): { id: string; typed: string | undefined; error: string | undefined; rule: FieldRule | undefined } {
  const { state, typed, idPrefix, labels, rules } = use(ActionFormContext)
  const id = `${idPrefix}${name}`
  useEffect(() => {
    if (label !== undefined) labels.set(id, label)
  }, [labels, id, label])
  return { id, typed: typed?.[name], error: state.problems[name], rule: ruleOf(rules, name) }
}
