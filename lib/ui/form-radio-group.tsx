'use client'

import { useFormField } from './action-form-context'
import { useChangedHint } from './use-changed-hint'
import { RadioGroupField, type RadioGroupFieldProps } from './radio-group-field'

/** A `RadioGroupField` that shows what was chosen and what was wrong with it, from the form around it. */
export function FormRadioGroup(props: RadioGroupFieldProps) {
  const { id, typed, error, rule } = useFormField(props.name, props.label)
  const present = props.defaultValue ?? ''
  const hint = useChangedHint(
    props.name,
    props.hint,
    present,
    props.options.find(({ value }) => value === present)?.label,
    '',
  )
  return (
    <RadioGroupField
      {...props}
      required={props.required ?? rule?.isRequired}
      id={id}
      hint={hint}
      defaultValue={typed ?? props.defaultValue}
      error={error}
    />
  )
}
