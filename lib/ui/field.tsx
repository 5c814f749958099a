import type { ReactNode } from 'react'
import { controlClass, type ControlWidth } from './control-class'
import { describedBy } from './described-by'
import { FieldFrame } from './field-frame'

export type FieldProps = {
  /** Name in the form; also the id unless another is given. */
  name: string
  id?: string
  type: 'text' | 'email' | 'password' | 'number' | 'date'
  label: string
  /** Shown behind the control and read out with it. */
  unit?: string
  required?: boolean
  optionalWord?: string
  defaultValue?: string
  autoComplete?: string
  maxLength?: number
  width?: ControlWidth
  hint?: ReactNode
  error?: string
}

/** One line to type into, with its unit. */
export function Field(props: FieldProps) {
  const { name, id = name, type, label, unit, required = false, width = 'full', hint, error } = props
  const unitId = unit ? `${id}-unit` : undefined
  return (
    <FieldFrame id={id} label={label} optionalWord={props.optionalWord} hint={hint} error={error}>
      <div className="flex items-center gap-2">
        <input
          id={id}
          name={name}
          // A browser's own number field changes under the wheel and takes no comma where the page's language has one.
          type={type === 'number' ? 'text' : type}
          inputMode={type === 'number' ? 'decimal' : undefined}
          required={required}
          defaultValue={props.defaultValue}
          autoComplete={props.autoComplete ?? (type === 'number' ? 'off' : undefined)}
          maxLength={props.maxLength}
          aria-invalid={error ? true : undefined}
          aria-describedby={[unitId, describedBy(id, hint, error)].filter(Boolean).join(' ') || undefined}
          className={controlClass(width)}
        />
        {unit ? (
          <span id={unitId} className="shrink-0 text-ink-2">
            {unit}
          </span>
        ) : null}
      </div>
    </FieldFrame>
  )
}
