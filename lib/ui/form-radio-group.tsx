'use client'

import { useFormField } from './action-form-context'
import { RadioGroupField, type RadioGroupFieldProps } from './radio-group-field'

/** A `RadioGroupField` that shows what was chosen and what was wrong with it, from the form around it. */
export function FormRadioGroup(props: RadioGroupFieldProps) {
  const { id, typed, error, rule } = useFormField(props.name, props.label)
  return <RadioGroupField {...props} required={props.required ?? rule?.isRequired} id={id} defaultValue={typed ?? props.defaultValue} error={error} />
}
