import { useEffect, useState } from 'react'
import { stationMixing as words } from '../../words/en/station-mixing'
import type { Kept } from '../keep/tablet'
import { takeBack } from '../talk/take-back'
import { Tap } from '../ui/tap'

/** As long as the book lets a move be taken back. */
const undoMs = 10_000

type TakeBackProps = {
  name: 'begun' | 'out'
  moved: Kept['begun']
  go: string
  onDone?(): Promise<void>
}

/** That a dough was begun or taken out was a slip: for ten seconds, by whoever tapped it. */
export function TakeBack({ name, moved, go, onDone }: TakeBackProps) {
  const leftMs = () => moved.at + undoMs - Date.now()
  const [isOver, setOver] = useState(() => leftMs() <= 0)
  const [isAsking, setAsking] = useState(false)
  const [error, setError] = useState<string | null>(null)
  useEffect(() => {
    const timer = setTimeout(() => setOver(true), Math.max(0, moved.at + undoMs - Date.now()))
    return () => clearTimeout(timer)
  }, [moved.at])
  if (isOver && error === null) return null
  const take = async () => {
    setAsking(true)
    const refused = await takeBack(name, moved)
    setAsking(false)
    if (refused) setError(refused.words ?? words.takeBack.unknown)
    else await onDone?.()
  }
  return (
    <section>
      {!isOver && (
        <>
          <p>{words.takeBack.note}</p>
          <Tap look="plain" disabled={isAsking} onTap={() => void take()}>
            {isAsking ? words.begin.asking : go}
          </Tap>
        </>
      )}
      <p role="alert" className="fault">
        {error}
      </p>
    </section>
  )
}
