import type { ReactNode } from 'react'
import { controlClass } from './control-class'
import { describedBy } from './described-by'
import { FieldFrame } from './field-frame'

export type TextAreaFieldProps = {
  name: string
  id?: string
  label: string
  rows?: number
  required?: boolean
  optionalWord?: string
  defaultValue?: string
  maxLength?: number
  hint?: ReactNode
  error?: string
}

/** Several lines to type into: a reason, a note. */
export function TextAreaField(props: TextAreaFieldProps) {
  const { name, id = name, label, rows = 3, required = false, hint, error } = props
  return (
    <FieldFrame id={id} label={label} optionalWord={props.optionalWord} hint={hint} error={error}>
      <textarea
        id={id}
        name={name}
        rows={rows}
        required={required}
        defaultValue={props.defaultValue}
        maxLength={props.maxLength}
        aria-invalid={error ? true : undefined}
        aria-describedby={describedBy(id, hint, error)}
        className={`block ${controlClass('full')}`}
      />
    </FieldFrame>
  )
}
