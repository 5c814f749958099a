import type { ReactNode } from 'react'
import { buttonClass, type ButtonTone } from './button-class'

export type ButtonProps = {
  /** `go` is the one next thing, at most once on a page; `quiet` reads as a link; `stop-quiet` takes something away. */
  tone: ButtonTone
  /** Sent with the form, to tell several buttons apart. */
  name?: string
  value?: string
  disabled?: boolean
  /** More than the words say, where several buttons on a page have the same ones: 'Withdraw Ayo'. */
  fullLabel?: string
  children: ReactNode
}

/** Submits the form it stands in. */
export function Button({ tone, name, value, disabled, fullLabel, children }: ButtonProps) {
  return (
    <button
      type="submit"
      name={name}
      value={value}
      disabled={disabled}
      aria-label={fullLabel}
      className={buttonClass(tone)}
    >
      {children}
    </button>
  )
}
