import type { ReactNode } from 'react'
import { controlClass } from './control-class'
import { describedBy } from './described-by'
import { FieldFrame } from './field-frame'

export type FileFieldProps = {
  name: string
  id?: string
  label: string
  /** Which files the browser offers first, as in HTML. */
  accept: string
  optionalWord?: string
  hint?: ReactNode
  error?: string
}

/** A file of the person's own, by the browser's own button. */
export function FileField({ name, id = name, label, accept, optionalWord, hint, error }: FileFieldProps) {
  return (
    <FieldFrame id={id} label={label} optionalWord={optionalWord} hint={hint} error={error}>
      <input
        id={id}
        name={name}
        type="file"
        accept={accept}
        aria-invalid={error ? true : undefined}
        aria-describedby={describedBy(id, hint, error)}
        className={`block ${controlClass('full')}`}
      />
    </FieldFrame>
  )
}
