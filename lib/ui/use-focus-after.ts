'use client'

import { useEffect, type RefObject } from 'react'
import { focusNext } from './focus-next'

/**
 * Keeps the focus near a form that was done: its button is made anew, or the form is gone with what it was for. Refused, it
 * is the summary's.
 * @param doneCount how often it was done
 */
export function useFocusAfter(form: RefObject<HTMLFormElement | null>, doneCount: number): void {
  useEffect(() => {
    if (doneCount > 0) focusNext(sectionOf(form.current))
  }, [form, doneCount])
  useEffect(() => {
    const sectionId = sectionOf(form.current)
    // Once what takes the form's place is there.
    return () => void requestAnimationFrame(() => focusNext(sectionId))
  }, [form])
}

function sectionOf(form: HTMLFormElement | null): string | null {
  return form?.closest('section[id]')?.id ?? null
}
