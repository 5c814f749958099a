'use client'

import { use } from 'react'
import { ActionFormContext, useFormField } from './action-form-context'
import { CheckField, type CheckFieldProps } from './check-field'

/** A `CheckField` that keeps its tick over an answer. */
export function FormCheck(props: CheckFieldProps) {
  const { state } = use(ActionFormContext)
  const { id, typed, error } = useFormField(props.name, props.label)
  const answered = state.answers > 0 && !state.done
  return <CheckField {...props} id={id} defaultChecked={answered ? typed !== undefined : props.defaultChecked} error={error} />
}
