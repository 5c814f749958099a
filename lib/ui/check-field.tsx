import type { ReactNode } from 'react'
import { describedBy } from './described-by'
import { ErrorLine } from './error-line'

export type CheckFieldProps = {
  name: string
  id?: string
  label: string
  /** Sent when ticked; 'on' unless given. */
  value?: string
  required?: boolean
  defaultChecked?: boolean
  hint?: ReactNode
  error?: string
}

/** Yes or no. The whole line is the target. */
export function CheckField(props: CheckFieldProps) {
  const { name, id = name, label, value, required = false, defaultChecked = false, hint, error } = props
  return (
    <div>
      <label htmlFor={id} className="flex min-h-8 max-w-column cursor-pointer items-start gap-3 py-1">
        <input
          id={id}
          name={name}
          type="checkbox"
          value={value}
          required={required}
          defaultChecked={defaultChecked}
          aria-invalid={error ? true : undefined}
          aria-describedby={describedBy(id, hint, error)}
          className="size-5 shrink-0 accent-ink"
        />
        {label}
      </label>
      {hint ? (
        <p id={`${id}-hint`} className="max-w-column pl-8 text-small text-ink-2">
          {hint}
        </p>
      ) : null}
      {error ? <ErrorLine id={`${id}-error`} text={error} /> : null}
    </div>
  )
}
