'use client'

import { Fragment, useActionState, useMemo, useState, type ReactNode } from 'react'
import { ActionFormContext } from './action-form-context'
import { countOnce } from './count-once'
import { FormSummary } from './form-summary'
import { emptyFormState, type FormAction } from './form-state'
import { keepTyped } from './keep-typed'

export type ActionFormProps = {
  action: FormAction
  /** Prefix of the fields' ids, where a page has several forms. */
  idPrefix?: string
  children: ReactNode
}

/** A form that a server action answers: every fault at its field and at the top, nothing typed lost, once however often it is sent. */
export function ActionForm({ action, idPrefix = '', children }: ActionFormProps) {
  const [formId] = useState<{ current: string | null }>(() => ({ current: null }))
  const answered = useMemo(() => countOnce(keepTyped(action), formId), [action, formId])
  const [state, dispatch, pending] = useActionState(answered, emptyFormState)
  const [labels] = useState(() => new Map<string, string>())
  const context = useMemo(() => ({ state, pending, idPrefix, labels }), [state, pending, idPrefix, labels])
  const errors = useMemo(
    () =>
      Object.entries(state.problems).map(([name, text]) => {
        const fieldId = `${idPrefix}${name}`
        return { fieldId, label: labels.get(fieldId), text }
      }),
    [state, idPrefix, labels],
  )
  return (
    <ActionFormContext value={context}>
      <form action={dispatch} noValidate>
        {state.refusal ? <FormSummary title={state.refusal} errors={errors} /> : null}
        {/* React empties a form after its action; new fields with what was typed as their default keep it. */}
        <Fragment key={state.answers}>{children}</Fragment>
      </form>
    </ActionFormContext>
  )
}
