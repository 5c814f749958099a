import type { ReactNode } from 'react'
import { buttonClass, type ButtonTone } from './button-class'

export type PressButtonProps = {
  tone: ButtonTone
  onPress: () => void
  id?: string
  disabled?: boolean
  /** More than the words say, where several buttons on a page have the same ones. */
  fullLabel?: string
  children: ReactNode
}

/** Does something on the page without sending the form around it. */
export function PressButton({ tone, onPress, id, disabled, fullLabel, children }: PressButtonProps) {
  return (
    <button
      type="button"
      id={id}
      onClick={onPress}
      disabled={disabled}
      aria-label={fullLabel}
      className={buttonClass(tone)}
    >
      {children}
    </button>
  )
}
