import { useEffect, useState } from 'react'
import { stationMixing as words } from '../../words/en/station-mixing'
import { forget, type Kept } from '../keep/tablet'
import { takeBack } from '../talk/take-back'
import { Tap } from '../ui/tap'

/** As long as the book lets a move be taken back. */
const undoMs = 10_000

/** That a dough was begun was a slip: for ten seconds, by whoever tapped it. */
export function TakeBack({ begun }: { begun: Kept['begun'] }) {
  const leftMs = () => begun.at + undoMs - Date.now()
  const [isOver, setOver] = useState(() => leftMs() <= 0)
  const [isAsking, setAsking] = useState(false)
  const [error, setError] = useState<string | null>(null)
  useEffect(() => {
    const timer = setTimeout(() => setOver(true), Math.max(0, begun.at + undoMs - Date.now()))
    return () => clearTimeout(timer)
  }, [begun.at])
  if (isOver && error === null) return null
  const take = async () => {
    setAsking(true)
    const refused = await takeBack(begun)
    setAsking(false)
    if (refused) setError(refused.words ?? words.takeBack.unknown)
    else await forget('at')
  }
  return (
    <section>
      {!isOver && (
        <>
          <p>{words.takeBack.note}</p>
          <Tap look="plain" disabled={isAsking} onTap={() => void take()}>
            {isAsking ? words.begin.asking : words.takeBack.go}
          </Tap>
        </>
      )}
      <p role="alert" className="fault">
        {error}
      </p>
    </section>
  )
}
