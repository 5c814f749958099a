import { useEffect, useEffectEvent, useRef, useState } from 'react'
import { readBadge } from '../../kitchen/badge-text.input'
import { stationBadge as words } from '../../words/en/station-badge'
import { Scanner } from '../scan/scanner'
import { useHandScanner } from '../scan/use-hand-scanner'
import { catchUp } from '../talk/keep-going'
import { logOnByBadge } from '../talk/people'
import { Tap } from '../ui/tap'

/** Nobody is on the tablet, so nobody else would let the camera go again. */
const patienceMs = 60_000

export type Badge = {
  fault: string | null
  isAsking: boolean
  clear(): void
  /** Logs on whose badge is among the codes that were read in one go. */
  see(texts: readonly string[]): void
}

/** Logs on by a badge that the camera sees, or that a hand scanner types while this is on the screen. */
export function useBadge(): Badge {
  const [fault, setFault] = useState<string | null>(null)
  const [isAsking, setAsking] = useState(false)
  const asking = useRef(false)
  const show = async (texts: readonly string[]) => {
    if (asking.current) return
    const [badge, ...more] = new Set(texts.filter((text) => readBadge(text) !== null))
    if (badge === undefined || more.length > 0) {
      setFault(badge === undefined ? words.none : words.several)
      return
    }
    asking.current = true
    setAsking(true)
    setFault(null)
    const refused = await logOnByBadge(badge)
    asking.current = false
    setAsking(false)
    if (refused) setFault(refused.words ?? words.offline)
    else await catchUp()
  }
  const see = (texts: readonly string[]) => void show(texts)
  useHandScanner((text) => see([text]))
  return { fault, isAsking, clear: () => setFault(null), see }
}

/** The camera, for a badge; after a minute it closes by itself. */
export function BadgeScreen({ badge, onBack }: { badge: Badge; onBack(): void }) {
  const leave = useEffectEvent(onBack)
  useEffect(() => {
    const timer = setTimeout(() => leave(), patienceMs)
    return () => clearTimeout(timer)
  }, [])
  return (
    <div className="narrow">
      <div className="heads">
        <h1>{words.title}</h1>
        <Tap look="quiet" onTap={onBack}>
          {words.back}
        </Tap>
      </div>
      <Scanner onCodes={badge.see} faults={words.camera} />
      <p role="status">{badge.isAsking ? words.judging : null}</p>
      <p role="alert" className="fault">
        {badge.fault}
      </p>
    </div>
  )
}
