'use client'

import { use, type ReactNode } from 'react'
import { ActionFormContext } from './action-form-context'
import { floorButtonClass, type FloorTone } from './floor-button-class'

export type FloorButtonProps = {
  tone: FloorTone
  /** Given where a press does something here; left out it submits the form around it. */
  onPress?: () => void
  name?: string
  value?: string
  disabled?: boolean
  /** More than the words say, where several buttons on a page have the same ones. */
  fullLabel?: string
  children: ReactNode
}

/** A button for the floor; it rests while the form around it waits for its answer, so that nothing is sent twice. */
export function FloorButton({ tone, onPress, name, value, disabled = false, fullLabel, children }: FloorButtonProps) {
  const { pending } = use(ActionFormContext)
  return (
    <button
      type={onPress ? 'button' : 'submit'}
      onClick={onPress}
      name={name}
      value={value}
      disabled={disabled || pending}
      aria-label={fullLabel}
      className={floorButtonClass(tone)}
    >
      {children}
    </button>
  )
}
