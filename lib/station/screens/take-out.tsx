import { stationMixing } from '../../words/en/station-mixing'
import { stationRepairs } from '../../words/en/station-repairs'
import { takeOut } from '../talk/repair-dough'
import { Tap } from '../ui/tap'
import { useRepair } from './use-repair'

const words = stationRepairs.takeOut

type TakeOutProps = {
  batchId: string
  /** What was noted of it last. */
  why: string
  isLost: boolean
  /** The book takes a dough out for what it knows. */
  isInBook: boolean
  personId: string
}

/** A dough is taken out for what was noted of it: lost, or set aside. */
export function TakeOut({ batchId, why, isLost, isInBook, personId }: TakeOutProps) {
  const { ask, isAsking, fault, isOnline } = useRepair(words)
  const take = (to: 'lost' | 'set_aside') => void ask(() => takeOut({ batchId, to, why, personId }))
  return (
    <section>
      <h2>{words.title}</h2>
      <p>{words.note}</p>
      {!isOnline && <p className="attention">{words.offline}</p>}
      {!isInBook && <p>{words.unsent}</p>}
      <p role="alert" className="fault">
        {fault}
      </p>
      <div className="more">
        <Tap look={isLost ? 'main' : 'plain'} disabled={isAsking || !isInBook} onTap={() => take('lost')}>
          {isAsking ? stationMixing.begin.asking : words.lost}
        </Tap>
        <Tap look="plain" disabled={isAsking || !isInBook} onTap={() => take('set_aside')}>
          {words.aside}
        </Tap>
      </div>
    </section>
  )
}
