'use client'

import { use } from 'react'
import { ActionFormContext, useFormField } from './action-form-context'
import { CheckField, type CheckFieldProps } from './check-field'

/** A `CheckField` that keeps its tick over an answer and a reload. */
export function FormCheck(props: CheckFieldProps) {
  const { typed: typedValues } = use(ActionFormContext)
  const { id, typed, error } = useFormField(props.name, props.label)
  return <CheckField {...props} id={id} defaultChecked={typedValues !== null ? typed !== undefined : props.defaultChecked} error={error} />
}
