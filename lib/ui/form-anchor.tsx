'use client'

import { useFormField } from './action-form-context'
import { ErrorLine } from './error-line'

/** Where a fault is said that belongs to no single field; the summary's link leads here. */
export function FormAnchor({ name }: { name: string }) {
  const { id, error } = useFormField(name)
  return (
    <div id={id} tabIndex={-1}>
      {error ? <ErrorLine id={`${id}-error`} text={error} /> : null}
    </div>
  )
}
