import { useState } from 'react'
import { say } from '../../words/say'
import { stationMixing as words } from '../../words/en/station-mixing'
import type { NextDough } from '../keep/facts'
import { atDough, recall } from '../keep/tablet'
import type { Came } from '../talk/ask-once'
import { beginDough } from '../talk/begin-dough'
import { useGoOn } from '../ui/use-go-on'

/** Refusals by which something else is next by now, however they are said at the desk. */
const moved = ['stale', 'stale-moved-on', 'before-its-turn']

/** Begins a dough at a tap: which one is asked for, and what went wrong. */
export function useBeginning(personId: string) {
  const [asked, setAsked] = useState<string | null>(null)
  const [fault, setFault] = useState<string | null>(null)
  const goOn = useGoOn()
  const begin = async (dough: NextDough, cleanDownDone: boolean) => {
    if (asked !== null) return
    setAsked(dough.id)
    setFault(null)
    const begun = await beginDough(dough, personId, cleanDownDone)
    const isThere = (await recall('floor'))?.value.doughs.some(({ id }) => id === dough.id) ?? false
    setAsked(null)
    if (begun.outcome !== 'done') setFault(faultOf(begun, dough.code, isThere))
    // It is opened once the tablet has its places.
    else await goOn(isThere ? atDough(dough.id) : null)
  }
  return { begin, asked, fault }
}

function faultOf(begun: Exclude<Came, { outcome: 'done' }>, code: string, isThere: boolean): string {
  if (begun.outcome === 'unknown') return say(words.begin.unknown, 'en', { code })
  if (!moved.includes(begun.code) && begun.words !== null) return begun.words
  return isThere ? say(words.begin.already, 'en', { code }) : words.begin.changed
}
