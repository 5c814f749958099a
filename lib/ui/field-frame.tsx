import type { ReactNode } from 'react'
import { ErrorLine } from './error-line'

export type FieldFrameProps = {
  id: string
  label: string
  /** The word behind the label of a field that may stay empty: 'optional'. */
  optionalWord?: string
  hint?: ReactNode
  error?: string
  children: ReactNode
}

/** Label above, control, hint and error below. The control names them by `describedBy`. */
export function FieldFrame({ id, label, optionalWord, hint, error, children }: FieldFrameProps) {
  return (
    <div>
      <label htmlFor={id} className="mb-1 flex items-baseline gap-x-2 font-semibold">
        {label}
        {optionalWord ? <span className="text-small font-normal text-ink-2">{optionalWord}</span> : null}
      </label>
      {children}
      {hint ? (
        <p id={`${id}-hint`} className="mt-1 max-w-column text-small text-ink-2">
          {hint}
        </p>
      ) : null}
      {error ? <ErrorLine id={`${id}-error`} text={error} /> : null}
    </div>
  )
}
