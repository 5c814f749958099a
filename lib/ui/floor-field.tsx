'use client'

import { useFormField } from './action-form-context'
import { describedBy } from './described-by'
import { FieldFrame } from './field-frame'
import { floorControlClass } from './floor-control-class'

export type FloorFieldProps = {
  name: string
  type: 'text' | 'count' | 'mass' | 'day' | 'time'
  label: string
  hint?: string
  required?: boolean
  defaultValue?: string
  maxLength?: number
}

const inputs = {
  text: { type: 'text', width: 'line' },
  count: { type: 'text', inputMode: 'numeric', width: 'number' },
  mass: { type: 'text', inputMode: 'decimal', width: 'number' },
  day: { type: 'date', width: 'number' },
  time: { type: 'time', width: 'number' },
} as const

/** One line to type into on the floor, in the form around it; a count opens the number keys, a mass those with a decimal mark, a day and a time the browser's own. */
export function FloorField({ name, type, label, hint, required, defaultValue, maxLength }: FloorFieldProps) {
  const { id, typed, error, rule } = useFormField(name, label)
  const { width, ...input } = inputs[type]
  return (
    <FieldFrame id={id} label={label} hint={hint} error={error}>
      <input
        id={id}
        name={name}
        {...input}
        autoComplete="off"
        required={required ?? rule?.isRequired}
        defaultValue={typed ?? defaultValue}
        maxLength={maxLength ?? rule?.mostLength}
        aria-invalid={error ? true : undefined}
        aria-describedby={describedBy(id, hint, error)}
        className={floorControlClass(width)}
      />
    </FieldFrame>
  )
}
