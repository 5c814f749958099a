'use client'

import { useFormField } from './action-form-context'
import { RadioGroupField, type RadioGroupFieldProps } from './radio-group-field'

/** A `RadioGroupField` that shows what was chosen and what was wrong with it, from the form around it. */
export function FormRadioGroup(props: RadioGroupFieldProps) {
  const { id, typed, error } = useFormField(props.name, props.label)
  return <RadioGroupField {...props} id={id} defaultValue={typed ?? props.defaultValue} error={error} />
}
