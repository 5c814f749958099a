import { say } from '../../words/say'
import { station as words } from '../../words/en/station'
import { stationCauses } from '../../words/en/station-causes'
import { stationMixing } from '../../words/en/station-mixing'
import { stationNotes } from '../../words/en/station-notes'
import { stationPhotos } from '../../words/en/station-photos'
import type { Floor, FloorDough } from '../keep/facts'
import type { KeptBy } from '../keep/keep-entry'
import { forget, remember, type Kept } from '../keep/tablet'
import type { KeptList } from '../keep/weigh-facts'
import { isSaidLost } from '../outbox/causes-of-dough'
import type { OutboxEntry } from '../outbox/entry'
import type { TabletPhoto } from '../photo/tablet-photo'
import { stepsOfDough } from '../outbox/steps-of-dough'
import { Tap } from '../ui/tap'
import { useGoOn } from '../ui/use-go-on'
import { Cautions } from './cautions'
import { PhotosOf } from './photos'
import { PiecesCounted } from './pieces-counted'
import { Places } from './places'
import { Steps } from './steps'
import { TakeBack } from './take-back'
import { Water } from './water'
import { WeighGate } from './weigh-gate'
import { WentWrong } from './went-wrong'

type DoughProps = {
  dough: FloorDough | null
  floor: { value: Floor; at: number } | null
  kept: KeptList | null
  begun: Kept['begun'] | null
  by: KeptBy
  aheadMs: number
  temperatureUnit: '°C' | '°F'
  entries: readonly OutboxEntry[]
  photos: readonly TabletPhoto[]
  locale: string
  timeZone: string
}

/** One dough: what can hurt somebody at it, and every place that is read, with what stands there. */
export function DoughScreen({
  dough,
  floor,
  kept,
  begun,
  by,
  entries,
  photos,
  locale,
  timeZone,
  ...clock
}: DoughProps) {
  const goOn = useGoOn()
  const { personId } = by
  const back = (
    <Tap look="quiet" onTap={() => void forget('at')}>
      {words.dough.back}
    </Tap>
  )
  if (!dough)
    return (
      <div className="narrow">
        {back}
        <p>{words.dough.gone}</p>
      </div>
    )
  // The first of all steps is that mixing begins.
  const isMixed = stepsOfDough(dough, entries, clock.aheadMs).length > 0
  const isLost = isSaidLost(dough.id, entries)
  const beforeMixing = dough.state === 'weighing' && !isMixed && floor !== null
  return (
    <div className="narrow">
      <div className="heads">
        <h1>{say(words.dough.title, 'en', { code: dough.code })}</h1>
        {back}
      </div>
      <div className="acts">
        <Tap look="quiet" onTap={() => void remember('noting', { batchId: dough.id, code: dough.code })}>
          {stationNotes.write}
        </Tap>
        <Tap
          look="quiet"
          onTap={() => void remember('photographing', { batchId: dough.id, code: dough.code, piece: null })}
        >
          {stationPhotos.go}
        </Tap>
        <Tap look="quiet" onTap={() => void remember('wrong', { batchId: dough.id, code: dough.code })}>
          {stationCauses.go}
        </Tap>
      </div>
      <WentWrong {...{ dough, entries, personId, locale, timeZone }} />
      <Cautions dough={dough} />
      {begun?.batchId === dough.id && begun.personId === personId && (
        <TakeBack key={begun.at} name="begun" moved={begun} go={stationMixing.takeBack.go} onDone={() => goOn(null)} />
      )}
      <WeighGate {...{ dough, kept, personId, entries }} isMain={!isMixed && !isLost} />
      {beforeMixing && <Water {...{ dough, floor, entries, locale, timeZone }} />}
      <Steps {...clock} {...{ dough, entries, by, locale, timeZone }} isMain={!isLost} />
      {dough.state !== 'weighing' && (
        <PiecesCounted {...{ dough, entries, locale, timeZone }} aheadMs={clock.aheadMs} />
      )}
      <Places
        {...{ dough, entries, locale, timeZone }}
        piece={null}
        {...(beforeMixing ? { of: 'all-else' as const } : {})}
      />
      <PhotosOf {...{ photos, locale, timeZone }} batchId={dough.id} piece={null} />
    </div>
  )
}
