'use client'

import { useFormField } from './action-form-context'
import { describedBy } from './described-by'
import { FieldFrame } from './field-frame'
import { floorControlClass } from './floor-control-class'

export type FloorSelectProps = {
  name: string
  label: string
  hint?: string
  /** The line that stands there until something is chosen; it sends an empty text. */
  emptyLabel: string
  options: readonly { value: string; label: string }[]
  defaultValue?: string
}

/** One of several, on the floor, in the form around it. */
export function FloorSelect({ name, label, hint, emptyLabel, options, defaultValue }: FloorSelectProps) {
  const { id, typed, error } = useFormField(name, label)
  return (
    <FieldFrame id={id} label={label} hint={hint} error={error}>
      <select
        id={id}
        name={name}
        defaultValue={typed ?? defaultValue ?? ''}
        aria-invalid={error ? true : undefined}
        aria-describedby={describedBy(id, hint, error)}
        className={floorControlClass('line')}
      >
        <option value="">{emptyLabel}</option>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </FieldFrame>
  )
}
