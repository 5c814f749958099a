'use client'

import type { ReactNode } from 'react'
import { PressButton } from './press-button'

/** Prints the page, as the browser's own menu does. */
export function PrintButton({ children }: { children: ReactNode }) {
  return (
    <PressButton tone="plain" onPress={() => window.print()}>
      {children}
    </PressButton>
  )
}
