'use client'

import { useFormField } from './action-form-context'
import { SelectField, type SelectFieldProps } from './select-field'

/** A `SelectField` that shows what was chosen and what was wrong with it, from the form around it. */
export function FormSelect(props: SelectFieldProps) {
  const { id, typed, error } = useFormField(props.name, props.label)
  return <SelectField {...props} id={id} defaultValue={typed ?? props.defaultValue} error={error} />
}
