import { say } from '../../words/say'
import { station } from '../../words/en/station'
import { stationMixing } from '../../words/en/station-mixing'
import { stationRepairs } from '../../words/en/station-repairs'
import type { OutDough } from '../keep/facts'
import { forget, type Kept } from '../keep/tablet'
import { bakeAgain } from '../talk/repair-dough'
import { Tap } from '../ui/tap'
import { TakeBack } from './take-back'
import { useRepair } from './use-repair'

const words = stationRepairs.out

type OutScreenProps = {
  dough: OutDough
  /** The dough that was taken out here last. */
  moved: Kept['out'] | null
  personId: string
}

/** A dough that is out: what the plan allows to be done about it, at a tap, or why nothing can be. */
export function OutScreen({ dough, moved, personId }: OutScreenProps) {
  const { ask, isAsking, fault, isOnline } = useRepair(words)
  const { id, code, state, again, said, go, note } = dough
  return (
    <div className="narrow">
      <div className="heads">
        <h1>{say(words.title, 'en', { code, state })}</h1>
        <Tap look="quiet" onTap={() => void forget('at')}>
          {station.dough.back}
        </Tap>
      </div>
      <p className="what">{said}</p>
      {go !== null && (
        <>
          <p>{note}</p>
          <p>{words.addDay}</p>
          {!isOnline && <p className="attention">{words.offline}</p>}
        </>
      )}
      <p role="alert" className="fault">
        {fault}
      </p>
      {go !== null && (
        <Tap look="main" disabled={isAsking} onTap={() => void ask(() => bakeAgain(id, personId))}>
          {isAsking ? stationMixing.begin.asking : go}
        </Tap>
      )}
      {moved?.batchId === id && moved.personId === personId && again === null && (
        <TakeBack key={moved.at} name="out" moved={moved} go={stationRepairs.takeOut.back} />
      )}
    </div>
  )
}
