'use client'

import { buttonClass } from './button-class'

/** Loads the page anew, as whoever waits for something would. */
export function AgainButton({ children }: { children: string }) {
  return (
    <button type="button" onClick={() => window.location.reload()} className={buttonClass('go')}>
      {children}
    </button>
  )
}
