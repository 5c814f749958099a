'use client'

import { useFormField } from './action-form-context'
import { useChangedHint } from './use-changed-hint'
import { Field, type FieldProps } from './field'

/** A `Field` that shows what was typed and what was wrong with it, from the form around it. */
export function FormField(props: FieldProps) {
  const { id, typed, error } = useFormField(props.name, props.label)
  const hint = useChangedHint(props.name, props.hint, props.defaultValue)
  return <Field {...props} id={id} hint={hint} defaultValue={typed ?? props.defaultValue} error={error} />
}
