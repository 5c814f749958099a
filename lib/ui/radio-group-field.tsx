import type { ReactNode } from 'react'
import { describedBy } from './described-by'
import { ErrorLine } from './error-line'

export type RadioGroupFieldProps = {
  name: string
  id?: string
  label: string
  options: readonly { value: string; label: string; hint?: string }[]
  required?: boolean
  defaultValue?: string
  hint?: ReactNode
  error?: string
}

/** One of a few, all in sight, each with what it means. The group's id is on its first choice, so that a link lands there. */
export function RadioGroupField(props: RadioGroupFieldProps) {
  const { name, id = name, label, options, required = false, defaultValue, hint, error } = props
  return (
    <div
      role="radiogroup"
      aria-labelledby={`${id}-group`}
      aria-required={required || undefined}
      aria-invalid={error ? true : undefined}
      aria-describedby={describedBy(id, hint, error)}
      className="max-w-column"
    >
      <p id={`${id}-group`} className="mb-1 font-semibold">
        {label}
      </p>
      {hint ? (
        <p id={`${id}-hint`} className="mb-1 text-small text-ink-2">
          {hint}
        </p>
      ) : null}
      <div className={error ? 'border-y-2 border-stop' : 'border-y border-rule'}>
        {options.map((option, index) => {
          const optionId = index === 0 ? id : `${id}-${option.value}`
          const optionHintId = option.hint ? `${id}-${option.value}-hint` : undefined
          return (
            <div key={option.value} className="flex items-start gap-3 border-b border-rule last:border-b-0">
              <input
                id={optionId}
                name={name}
                type="radio"
                value={option.value}
                required={required}
                defaultChecked={option.value === defaultValue}
                aria-describedby={optionHintId}
                className="mt-2.5 size-5 shrink-0 accent-ink"
              />
              <label htmlFor={optionId} className="min-h-8 grow cursor-pointer py-2">
                {option.label}
                {option.hint ? (
                  <span id={optionHintId} className="block text-small text-ink-2">
                    {option.hint}
                  </span>
                ) : null}
              </label>
            </div>
          )
        })}
      </div>
      {error ? <ErrorLine id={`${id}-error`} text={error} /> : null}
    </div>
  )
}
