'use client'

import { useFormField } from './action-form-context'
import { useChangedHint } from './use-changed-hint'
import { SelectField, type SelectFieldProps } from './select-field'

/** A `SelectField` that shows what was chosen and what was wrong with it, from the form around it. */
export function FormSelect(props: SelectFieldProps) {
  const { id, typed, error, rule } = useFormField(props.name, props.label)
  const present = props.defaultValue ?? ''
  const hint = useChangedHint(
    props.name,
    props.hint,
    present,
    props.options.find(({ value }) => value === present)?.label,
  )
  return (
    <SelectField
      {...props}
      required={props.required ?? rule?.isRequired}
      id={id}
      hint={hint}
      defaultValue={typed ?? props.defaultValue}
      error={error}
    />
  )
}
