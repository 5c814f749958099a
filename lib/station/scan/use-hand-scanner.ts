import { useEffect, useEffectEvent } from 'react'
import { nothingTyped, typeKey } from './typed-keys'

/** Hears a hand scanner, which types like a keyboard, wherever no field has the focus. */
export function useHandScanner(onText: (text: string) => void): void {
  const tell = useEffectEvent(onText)
  useEffect(() => {
    let typed = nothingTyped
    const hear = (event: KeyboardEvent) => {
      if (event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement) return
      const next = typeKey(typed, event.key, event.timeStamp)
      typed = next.typed
      if (next.scanned === null) return
      // Else it would tap whatever has the focus.
      event.preventDefault()
      tell(next.scanned)
    }
    window.addEventListener('keydown', hear)
    return () => window.removeEventListener('keydown', hear)
  }, [])
}
