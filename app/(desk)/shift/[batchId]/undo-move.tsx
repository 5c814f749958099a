'use client'

import { useEffect, useState, type ReactNode } from 'react'

/** Shows a way back for as long as it can be gone. */
export function UndoMove({ forMs, children }: { forMs: number; children: ReactNode }) {
  const [isOver, setIsOver] = useState(false)
  useEffect(() => {
    const timer = setTimeout(() => setIsOver(true), forMs)
    return () => clearTimeout(timer)
  }, [forMs])
  return isOver ? null : <div className="mt-4 print:hidden">{children}</div>
}
