'use client'

import { use } from 'react'
import { ActionFormContext, useFormField } from './action-form-context'
import { CheckField, type CheckFieldProps } from './check-field'
import { useChangedHint } from './use-changed-hint'

/** A `CheckField` that keeps its tick over an answer and a reload. */
export function FormCheck(props: CheckFieldProps) {
  const { typed: typedValues } = use(ActionFormContext)
  const { id, typed, error } = useFormField(props.name, props.label)
  const isTicked = props.defaultChecked ?? false
  const hint = useChangedHint(props.name, props.hint, isTicked ? (props.value ?? 'on') : '', isTicked, '')
  return (
    <CheckField
      {...props}
      id={id}
      hint={hint}
      defaultChecked={typedValues !== null ? typed !== undefined : props.defaultChecked}
      error={error}
    />
  )
}
