import { useState, type ReactNode } from 'react'
import { wantsPin } from '../../kitchen/conduct/wants-pin.input'
import { station } from '../../words/en/station'
import type { KeptBy } from '../keep/keep-entry'
import { readOnline } from '../talk/online'
import { PinPad } from './pin-pad'

/**
 * What is put right, under the PIN where the book will ask for it: the pad comes up first, and what was said waits behind.
 * @param q.isSlip as `isOwnSlip` says
 * @param q.pinAt when whoever is on the tablet typed their PIN here, ms
 */
export function usePinFirst<Said>(q: { isSlip: boolean; pinAt: number; by: KeptBy; onPut(said: Said): void }): {
  put(said: Said): void
  pad: ReactNode
} {
  const { isSlip, pinAt, by, onPut } = q
  const [held, setHeld] = useState<{ said: Said } | null>(null)
  return {
    put(said) {
      // Without a network nobody can judge a PIN: it is kept, and the book asks for the PIN when it comes in.
      if (readOnline() && wantsPin({ isSlip, pinGivenAt: new Date(pinAt), now: new Date() })) setHeld({ said })
      else onPut(said)
    },
    pad: held && (
      <PinPad
        person={{ id: by.personId, name: by.personName }}
        why={station.fix.pin}
        onBack={() => setHeld(null)}
        onDone={() => onPut(held.said)}
      />
    ),
  }
}
