import { useState } from 'react'
import { say } from '../../words/say'
import { stationScan as words } from '../../words/en/station-scan'
import type { Floor } from '../keep/facts'
import { openDough } from '../keep/tablet'
import type { OutboxEntry } from '../outbox/entry'
import { placeOfSlip } from '../outbox/place-of-slip'
import { whatCodesSay, type CodeSays } from '../scan/what-code-says'

export type SlipsOf = {
  floor: Floor
  entries: readonly OutboxEntry[]
  /** The measure that is being read: it goes on with the next piece. */
  measureId: string | null
}

/** Opens what codes say that were seen or typed, or says why not. */
export function useSlips({ floor, entries, measureId }: SlipsOf) {
  const [fault, setFault] = useState<string | null>(null)
  return {
    fault,
    clear: () => setFault(null),
    /** @returns whether something was opened */
    open(texts: readonly string[]): boolean {
      const said = whatCodesSay(texts, [...floor.doughs, ...floor.next, ...floor.out], window.location.origin)
      if (said?.says !== 'dough') {
        setFault(said && faultOf(said))
        return false
      }
      setFault(null)
      const dough = floor.doughs.find(({ id }) => id === said.batchId)
      void openDough(said.batchId, dough ? placeOfSlip(dough, said.piece, measureId, entries) : {})
      return true
    },
  }
}

function faultOf(said: Exclude<CodeSays, { says: 'dough' }>): string {
  switch (said.says) {
    case 'not-here':
      return words.notHere
    case 'elsewhere':
      return words.elsewhere
    case 'several':
      return words.several
    case 'empty':
      return words.empty
    case 'badge':
      return words.badge
    case 'same-code':
      return say(words.sameCode, 'en', { code: said.text })
    case 'no-slip':
      return say(words.noSlip, 'en', { text: said.text })
  }
}
