'use client'

import { useFormField } from './action-form-context'
import { Field, type FieldProps } from './field'

/** A `Field` that shows what was typed and what was wrong with it, from the form around it. */
export function FormField(props: FieldProps) {
  const { id, typed, error } = useFormField(props.name, props.label)
  return <Field {...props} id={id} defaultValue={typed ?? props.defaultValue} error={error} />
}
