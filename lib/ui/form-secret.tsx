'use client'

import { use } from 'react'
import { ActionFormContext } from './action-form-context'
import { SecretBox } from './secret-box'

/** Shows the single-use link that a form brought, once. */
export function FormSecret({ id }: { id: string }) {
  const { state } = use(ActionFormContext)
  const { link, label, caution } = state.done ?? {}
  if (!link || !label || !caution) return null
  return <SecretBox id={id} label={label} secret={link} caution={caution} />
}
