'use client'

import { use } from 'react'
import { ActionFormContext } from './action-form-context'
import { Button, type ButtonProps } from './button'

/** The button of an `ActionForm`; it rests while the answer is on its way, so that nothing is sent twice. */
export function SubmitButton(props: ButtonProps) {
  const { pending } = use(ActionFormContext)
  return <Button {...props} disabled={props.disabled || pending} />
}
