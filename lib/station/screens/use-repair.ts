import { useState, useSyncExternalStore } from 'react'
import type { Came } from '../talk/ask-once'
import { listenOnline, readOnline } from '../talk/online'

type Words = { unknown: string; unsent?: string }

/** Has the book do something about a dough at a tap, one thing at a time: whether it is asked, and what went wrong. */
export function useRepair(words: Words) {
  const [isAsking, setAsking] = useState(false)
  const [fault, setFault] = useState<string | null>(null)
  const isOnline = useSyncExternalStore(listenOnline, readOnline)
  const ask = async (work: () => Promise<Came | { outcome: 'unsent' }>): Promise<boolean> => {
    if (isAsking) return false
    setAsking(true)
    setFault(null)
    const came = await work()
    setAsking(false)
    if (came.outcome === 'unsent') setFault(words.unsent ?? words.unknown)
    else if (came.outcome === 'unknown') setFault(words.unknown)
    else if (came.outcome === 'refused') setFault(came.words ?? words.unknown)
    return came.outcome === 'done'
  }
  return { ask, isAsking, fault, isOnline }
}
