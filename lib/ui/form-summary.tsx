'use client'

import { useEffect, useRef } from 'react'
import { ToneMark } from './tone-mark'

export type FormSummaryProps = {
  title: string
  /** The same list object until the next answer: a new one takes the focus. Without `fieldId` it concerns the whole form. */
  errors: readonly { fieldId?: string; text: string }[]
}

/** All faults of a form at its top, each a link to its field. It takes the focus when an answer brings faults. */
export function FormSummary({ title, errors }: FormSummaryProps) {
  const box = useRef<HTMLDivElement>(null)
  useEffect(() => {
    if (errors.length > 0) box.current?.focus()
  }, [errors])
  if (errors.length === 0) return null
  return (
    <div ref={box} role="alert" tabIndex={-1} className="my-5 border-t-2 border-b border-t-stop border-b-rule py-3">
      <p className="flex items-baseline gap-3 font-bold text-stop">
        <ToneMark tone="stop" />
        {title}
      </p>
      <ul className="mt-1 pl-7">
        {errors.map((error) => (
          <li key={`${error.fieldId ?? ''} ${error.text}`}>
            {error.fieldId ? (
              <a href={`#${error.fieldId}`} className="inline-flex min-h-8 items-center">
                {error.text}
              </a>
            ) : (
              <span className="inline-flex min-h-8 items-center">{error.text}</span>
            )}
          </li>
        ))}
      </ul>
    </div>
  )
}
