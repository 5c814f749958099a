'use client'

import { useEffect, useEffectEvent, useRef, useState } from 'react'
import { v7 as uuid } from 'uuid'
import type { ReadingEntry } from '@/lib/kitchen/readings/reading-content.input'
import { useKeptTyped } from '@/lib/ui/use-kept-typed'
import { sendReading, type Sending } from './send-reading'

export type DraftState =
  | { step: 'typing' }
  /** Typed here earlier and not sent; the book may have changed since. */
  | { step: 'back'; at: string; isChanged: boolean }
  /** Keep was pressed and nothing is typed. */
  | { step: 'empty' }
  | { step: 'sending' }
  | { step: 'unsent'; why: 'not-answered' | 'wrong-echo' }
  /** The book asks whether it is right, and waits for a second tap. */
  | { step: 'odd' }
  | { step: 'refused'; words: string; problems: Record<string, string> }
  /** The book keeps it aside for the head baker: there is nothing more to do with it here. */
  | { step: 'aside'; words: string }

/** What is typed, by field; with the `id` and `takenAt` of the entry once it was sent. */
export type Typed = Readonly<Record<string, string>>

type Question = {
  /** Of the place on the page, by which what is typed is kept in this browser. */
  name: string
  /** Ids of what the book holds there. */
  inTheBook: readonly string[]
  make(typed: Typed & { id: string; takenAt: string }): ReadingEntry
  onKept(entry: ReadingEntry, sent: Extract<Sending, { outcome: 'kept' }>): void
  /** What was typed here earlier is back. */
  onBack(typed: Typed): void
  /** What got no answer had arrived: the page shows it from the book. */
  onArrived?(): void
  onRefused?(): void
  onAside?(): void
}

/**
 * One entry on its way to the book. Its id is made when it is first sent and stays while nobody knows whether it
 * arrived, also over a reload, so that sending again cannot keep it twice. A refused one was not kept and gets a new id,
 * and so does one that is outside what is usual, when it is sent again confirmed. One that is kept aside is the book's
 * from then on.
 */
export function useReadingDraft({ name, inTheBook, make, onKept, onBack, onArrived, onRefused, onAside }: Question) {
  const [state, setState] = useState<DraftState>({ step: 'typing' })
  const current = useRef<(Typed & { id: string; takenAt: string }) | null>(null)
  const given = inTheBook.join(' ')
  /** What is typed and not sent: since when, and beside what. */
  const typing = useRef<{ at: string; given: string } | null>(null)
  useEffect(() => {
    const former = typing.current
    if (former === null || former.given === given) return
    // Somebody else read it meanwhile, and the page has shown that by itself.
    setState((now) => (now.step === 'typing' ? { step: 'back', at: former.at, isChanged: true } : now))
  }, [given])
  const kept = useKeptTyped(name, (draft) => {
    const { id, takenAt, ...typed } = draft.values
    // It had arrived, only its answer had not.
    if (id !== undefined && inTheBook.includes(id)) {
      kept.drop()
      return
    }
    onBack(typed)
    if (id !== undefined && takenAt !== undefined) {
      current.current = { ...typed, id, takenAt }
      setState({ step: 'unsent', why: 'not-answered' })
    } else setState({ step: 'back', at: draft.at, isChanged: draft.given !== given })
  })

  const seesItself = useEffectEvent(() => {
    const sent = current.current
    if (state.step !== 'unsent' || sent === null || !inTheBook.includes(sent.id)) return
    current.current = null
    kept.drop()
    setState({ step: 'typing' })
    onArrived?.()
  })
  useEffect(() => seesItself(), [given, state.step])

  async function send(typed: Typed): Promise<void> {
    const sending = (current.current ??= { ...typed, id: uuid(), takenAt: new Date().toISOString() })
    kept.keep(sending, given)
    typing.current = null
    setState({ step: 'sending' })
    const entry = make(sending)
    const sent = await sendReading(entry)
    switch (sent.outcome) {
      case 'kept':
        current.current = null
        kept.drop()
        setState({ step: 'typing' })
        onKept(entry, sent)
        return
      case 'refused':
        current.current = null
        kept.keep(typed, given)
        setState({ step: 'refused', words: sent.words, problems: sent.problems })
        onRefused?.()
        return
      case 'aside':
        current.current = null
        kept.drop()
        setState({ step: 'aside', words: sent.words })
        onAside?.()
        onRefused?.()
        return
      case 'odd':
        current.current = null
        kept.keep(typed, given)
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
    /** Keeps it in this browser; what was said of the entry before no longer holds. */
    typed(typed: Typed) {
      kept.keep(typed, given)
      typing.current ??= { at: new Date().toISOString(), given }
      setState((now) => (now.step === 'sending' || now.step === 'unsent' ? now : { step: 'typing' }))
    },
    /** Nothing is typed here any more. */
    drop() {
      kept.drop()
      typing.current = null
      setState((now) => (now.step === 'sending' || now.step === 'unsent' ? now : { step: 'typing' }))
    },
  }
}

/** Whether what is typed is to be looked at again. */
export function isAtFault({ step }: DraftState): boolean {
  return step === 'empty' || step === 'odd' || step === 'refused'
}
