'use client'

import { useFormField } from './action-form-context'
import { useChangedHint } from './use-changed-hint'
import { TextAreaField, type TextAreaFieldProps } from './text-area-field'

/** A `TextAreaField` that shows what was typed and what was wrong with it, from the form around it. */
export function FormTextArea(props: TextAreaFieldProps) {
  const { id, typed, error, rule } = useFormField(props.name, props.label)
  const hint = useChangedHint(props.name, props.hint, props.defaultValue)
  return (
    <TextAreaField
      {...props}
      required={props.required ?? rule?.isRequired}
      maxLength={props.maxLength ?? rule?.mostLength}
      id={id}
      hint={hint}
      defaultValue={typed ?? props.defaultValue}
      error={error}
    />
  )
}
