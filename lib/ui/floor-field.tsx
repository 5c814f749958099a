'use client'

import { useFormField } from './action-form-context'
import { describedBy } from './described-by'
import { FieldFrame } from './field-frame'
import { floorControlClass } from './floor-control-class'

export type FloorFieldProps = {
  name: string
  type: 'text' | 'count' | 'mass'
  label: string
  hint?: string
  required?: boolean
  defaultValue?: string
  maxLength?: number
}

const inputModes = { text: undefined, count: 'numeric', mass: 'decimal' } as const

/** One line to type into on the floor, in the form around it; a count opens the number keys, a mass those with a decimal mark. */
export function FloorField({ name, type, label, hint, required, defaultValue, maxLength }: FloorFieldProps) {
  const { id, typed, error, rule } = useFormField(name, label)
  return (
    <FieldFrame id={id} label={label} hint={hint} error={error}>
      <input
        id={id}
        name={name}
        type="text"
        inputMode={inputModes[type]}
        autoComplete="off"
        required={required ?? rule?.isRequired}
        defaultValue={typed ?? defaultValue}
        maxLength={maxLength ?? rule?.mostLength}
        aria-invalid={error ? true : undefined}
        aria-describedby={describedBy(id, hint, error)}
        className={floorControlClass(type === 'text' ? 'line' : 'number')}
      />
    </FieldFrame>
  )
}
