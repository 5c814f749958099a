'use client'

import { useEffect, useRef } from 'react'
import { ToneMark } from './tone-mark'

export type FormSummaryProps = {
  /** Why nothing was kept. */
  title: string
  /** Faults at fields; none when the whole form is refused. A new list takes the focus. */
  errors: readonly { fieldId: string; label?: string; text: string }[]
}

/** Why a form was refused, and each fault as a link to its field. It takes the focus when an answer brings it. */
export function FormSummary({ title, errors }: FormSummaryProps) {
  const box = useRef<HTMLDivElement>(null)
  useEffect(() => {
    box.current?.focus()
  }, [errors])
  return (
    <div ref={box} role="alert" tabIndex={-1} className="my-5 border-t-2 border-b border-t-stop border-b-rule py-3">
      <p className="flex items-baseline gap-3 font-bold text-stop">
        <ToneMark tone="stop" />
        {title}
      </p>
      {errors.length > 0 ? (
        <ul className="mt-1 pl-7">
          {errors.map((error) => (
            <li key={error.fieldId}>
              <a href={`#${error.fieldId}`} className="inline-flex min-h-8 items-center">
                {named(error)}
              </a>
            </li>
          ))}
        </ul>
      ) : null}
    </div>
  )
}

function named({ label, text }: FormSummaryProps['errors'][number]): string {
  return label === undefined ? text : `${label}: ${text}`
}
