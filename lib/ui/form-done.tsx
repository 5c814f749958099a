'use client'

import { use } from 'react'
import { ActionFormContext } from './action-form-context'
import { Notice } from './notice'

/** Says that a form was done, after its last answer. */
export function FormDone({ word, text }: { word: string; text: string }) {
  const { state } = use(ActionFormContext)
  if (!state.done) return null
  return (
    <Notice tone="ok" word={word}>
      {text}
    </Notice>
  )
}
