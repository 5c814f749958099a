'use client'

import { useRef, useState } from 'react'
import { v7 as uuid } from 'uuid'
import type { ReadingEntry } from '@/lib/kitchen/readings/reading-content.input'
import { sendReading, type Sending } from './send-reading'

export type DraftState = { step: 'typing' } | { step: 'sending' } | { step: 'unsent'; why: 'not-answered' | 'wrong-echo' } | { step: 'refused'; words: string; problems: Record<string, string> }

/**
 * One entry on its way to the book. Its id is made when it is first sent and stays while nobody knows whether it
 * arrived, so that sending again cannot keep it twice. A refused one was not kept and gets a new id.
 */
export function useReadingDraft(onKept: (entry: ReadingEntry, sent: Extract<Sending, { outcome: 'kept' }>) => void) {
  const [state, setState] = useState<DraftState>({ step: 'typing' })
  const entry = useRef<ReadingEntry | null>(null)

  async function send(make: (id: string) => ReadingEntry): Promise<void> {
    const sending = (entry.current ??= make(uuid()))
    setState({ step: 'sending' })
    const sent = await sendReading(sending)
    switch (sent.outcome) {
      case 'kept':
        entry.current = null
        setState({ step: 'typing' })
        onKept(sending, sent)
        return
      case 'refused':
        entry.current = null
        setState({ step: 'refused', words: sent.words, problems: sent.problems })
        return
      case 'not-answered':
      case 'wrong-echo':
        setState({ step: 'unsent', why: sent.outcome })
        return
      default:
        return sent satisfies never
    }
  }

  return { state, send, typed: () => setState((now) => (now.step === 'refused' ? { step: 'typing' } : now)) }
}
