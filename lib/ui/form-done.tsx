'use client'

import { use, useEffect, useRef } from 'react'
import { ActionFormContext } from './action-form-context'
import { Notice } from './notice'

/** Says that a form was done, after its last answer, and takes the focus then. */
export function FormDone({ word, text }: { word: string; text: string }) {
  const { state } = use(ActionFormContext)
  const box = useRef<HTMLDivElement>(null)
  useEffect(() => {
    if (state.done) box.current?.focus()
  }, [state])
  if (!state.done) return null
  return (
    <div ref={box} tabIndex={-1} className="outline-none">
      <Notice tone="ok" word={word}>
        {text}
      </Notice>
    </div>
  )
}
