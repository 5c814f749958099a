import { useEffect } from 'react'
import { useHandScanner } from '../scan/use-hand-scanner'
import { useSlips, type SlipsOf } from './use-slips'

/** Opens what a hand scanner types, as the camera does; why nothing is opened is told until the next touch. */
export function HandScanner(slips: SlipsOf) {
  const { fault, clear, open } = useSlips(slips)
  useHandScanner((text) => open([text]))
  useEffect(() => {
    if (fault === null) return
    window.addEventListener('pointerdown', clear)
    return () => window.removeEventListener('pointerdown', clear)
  })
  return (
    <p role="alert" className="fault hand">
      {fault}
    </p>
  )
}
