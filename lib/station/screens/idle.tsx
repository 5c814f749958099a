import { useEffect, useRef, useState } from 'react'
import { station as words } from '../../words/en/station'
import { forget, remember, type Kept } from '../keep/tablet'
import { Tap } from '../ui/tap'

const warnMs = 60_000
/** A finger's click comes after its touch by less than this. */
const clickMs = 1_000
/** A touch is noted this often, so that a reload knows of it. */
const noteMs = 15_000

type IdleProps = {
  on: Kept['on']
  /** How long without a touch, ms. */
  idleMs: number
}

/** Lets whoever is on the tablet go when nobody has touched it for as long as the bakery says, and says so a minute before. */
export function Idle({ on, idleMs }: IdleProps) {
  const [isWarned, setWarned] = useState(false)
  const dialog = useRef<HTMLDialogElement>(null)
  const { personId, touchedAt } = on

  useEffect(() => {
    let touched = touchedAt
    let noted = touchedAt
    const isOver = () => Date.now() - touched >= idleMs
    // A tablet that slept has noticed nothing: the touch that wakes it may be anybody's, and does nothing as them.
    const touch = (event: Event) => {
      if (isOver()) {
        event.stopImmediatePropagation()
        event.preventDefault()
        void forget('on')
        return
      }
      touched = Date.now()
      // Gone before the click that a finger makes, the dialog would let that through to whatever lies below it.
      if (event.type !== 'pointerup') setWarned(false)
      if (touched - noted < noteMs) return
      noted = touched
      void remember('on', { personId, touchedAt: touched })
    }
    const look = () => {
      if (isOver()) void forget('on')
      else if (Date.now() - touched >= clickMs) setWarned(Date.now() - touched >= idleMs - warnMs)
    }
    look()
    const timer = setInterval(look, 1_000)
    const kinds = ['pointerup', 'click', 'keydown'] as const
    for (const kind of kinds) window.addEventListener(kind, touch, { capture: true })
    return () => {
      clearInterval(timer)
      for (const kind of kinds) window.removeEventListener(kind, touch, { capture: true })
    }
  }, [personId, touchedAt, idleMs])

  useEffect(() => {
    if (isWarned) dialog.current?.showModal()
    else dialog.current?.close()
  }, [isWarned])

  return (
    <dialog ref={dialog} aria-labelledby="idle-title">
      <h1 id="idle-title">{words.idle.title}</h1>
      <p>{words.idle.text}</p>
      <Tap look="main" onTap={() => void remember('on', { personId, touchedAt: Date.now() })}>
        {words.idle.stay}
      </Tap>
    </dialog>
  )
}
