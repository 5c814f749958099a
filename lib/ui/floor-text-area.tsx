'use client'

import { useFormField } from './action-form-context'
import { describedBy } from './described-by'
import { FieldFrame } from './field-frame'
import { floorControlClass } from './floor-control-class'

export type FloorTextAreaProps = { name: string; label: string; hint?: string }

/** Several lines to type into on the floor, in the form around it. */
export function FloorTextArea({ name, label, hint }: FloorTextAreaProps) {
  const { id, typed, error, rule } = useFormField(name, label)
  return (
    <FieldFrame id={id} label={label} hint={hint} error={error}>
      <textarea
        id={id}
        name={name}
        rows={3}
        required={rule?.isRequired}
        defaultValue={typed}
        maxLength={rule?.mostLength}
        aria-invalid={error ? true : undefined}
        aria-describedby={describedBy(id, hint, error)}
        className={`block ${floorControlClass('line')}`}
      />
    </FieldFrame>
  )
}
