'use client'

import { useRef, useState } from 'react'
import { v7 as uuid } from 'uuid'
import type { ReadingEntry } from '@/lib/kitchen/readings/reading-content.input'
import { sendReading, type Sending } from './send-reading'

export type DraftState =
  | { step: 'typing' }
  /** Keep was pressed and nothing is typed. */
  | { step: 'empty' }
  | { step: 'sending' }
  | { step: 'unsent'; why: 'not-answered' | 'wrong-echo' }
  /** The book asks whether it is right, and waits for a second tap. */
  | { step: 'odd' }
  | { step: 'refused'; words: string; problems: Record<string, string> }
  /** The book keeps it aside for the head baker: there is nothing more to do with it here. */
  | { step: 'aside'; words: string }

/**
 * One entry on its way to the book. Its id is made when it is first sent and stays while nobody knows whether it
 * arrived, so that sending again cannot keep it twice. A refused one was not kept and gets a new id, and so does one
 * that is outside what is usual, when it is sent again confirmed. One that is kept aside is the book's from then on.
 */
export function useReadingDraft(
  onKept: (entry: ReadingEntry, sent: Extract<Sending, { outcome: 'kept' }>) => void,
  onRefused?: () => void,
  onAside?: () => void,
) {
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
        onRefused?.()
        return
      case 'aside':
        entry.current = null
        setState({ step: 'aside', words: sent.words })
        onAside?.()
        onRefused?.()
        return
      case 'odd':
        entry.current = null
        setState({ step: 'odd' })
        return
      case 'not-answered':
      case 'wrong-echo':
        setState({ step: 'unsent', why: sent.outcome })
        return
      default:
        return sent satisfies never
    }
  }

  return {
    state,
    send,
    /** Nothing was typed when Keep was pressed. */
    empty: () => setState({ step: 'empty' }),
    /** What was said of the entry before no longer holds. */
    typed: () => setState((now) => (now.step === 'sending' || now.step === 'unsent' ? now : { step: 'typing' })),
  }
}

/** Whether what is typed is to be looked at again. */
export function isAtFault({ step }: DraftState): boolean {
  return step === 'empty' || step === 'odd' || step === 'refused'
}
