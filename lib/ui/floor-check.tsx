'use client'

import { useFormField } from './action-form-context'
import { describedBy } from './described-by'
import { ErrorLine } from './error-line'

/** Yes or no on the floor, in the form around it. The whole line is the target, 56 px high. */
export function FloorCheck({
  name,
  label,
  hint,
  fullLabel,
}: {
  name: string
  label: string
  hint?: string
  /** More than the words say, where several on a page have the same ones. */
  fullLabel?: string
}) {
  const { id, typed, error } = useFormField(name)
  return (
    <div>
      <label
        htmlFor={id}
        className="flex min-h-14 max-w-column cursor-pointer items-center gap-4 border-2 border-line bg-sheet px-4 py-2 text-lead font-semibold"
      >
        <input
          id={id}
          name={name}
          type="checkbox"
          defaultChecked={typed !== undefined}
          aria-label={fullLabel}
          aria-invalid={error ? true : undefined}
          aria-describedby={describedBy(id, hint, error)}
          className="size-7 shrink-0 accent-ink"
        />
        {label}
      </label>
      {hint ? (
        <p id={`${id}-hint`} className="mt-1 max-w-column text-ink-2">
          {hint}
        </p>
      ) : null}
      {error ? <ErrorLine id={`${id}-error`} text={error} /> : null}
    </div>
  )
}
