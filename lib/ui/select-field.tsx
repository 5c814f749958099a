import type { ReactNode } from 'react'
import { controlClass, type ControlWidth } from './control-class'
import { describedBy } from './described-by'
import { FieldFrame } from './field-frame'

export type SelectFieldProps = {
  name: string
  id?: string
  label: string
  options: readonly { value: string; label: string }[]
  /** The line that stands there until something is chosen; it sends an empty text. */
  emptyLabel?: string
  required?: boolean
  optionalWord?: string
  defaultValue?: string
  width?: ControlWidth
  hint?: ReactNode
  error?: string
  /** Told of each choice, where other fields depend on it. */
  onChoose?: (value: string) => void
}

/** One of several, from the browser's own list. Up to about five are better shown at once: see `RadioGroupField`. */
export function SelectField(props: SelectFieldProps) {
  const { name, id = name, label, options, emptyLabel, required = false, width = 'medium', hint, error } = props
  return (
    <FieldFrame id={id} label={label} optionalWord={props.optionalWord} hint={hint} error={error}>
      <select
        id={id}
        name={name}
        required={required}
        onChange={props.onChoose && ((event) => props.onChoose?.(event.currentTarget.value))}
        defaultValue={props.defaultValue}
        aria-invalid={error ? true : undefined}
        aria-describedby={describedBy(id, hint, error)}
        className={controlClass(width)}
      >
        {emptyLabel === undefined ? null : <option value="">{emptyLabel}</option>}
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </FieldFrame>
  )
}
