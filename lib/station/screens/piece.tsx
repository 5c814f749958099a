import { say } from '../../words/say'
import { station as words } from '../../words/en/station'
import { stationPhotos } from '../../words/en/station-photos'
import { stationScan } from '../../words/en/station-scan'
import type { FloorDough } from '../keep/facts'
import { openDough, remember } from '../keep/tablet'
import type { OutboxEntry } from '../outbox/entry'
import type { TabletPhoto } from '../photo/tablet-photo'
import { Tap } from '../ui/tap'
import { Cautions } from './cautions'
import { PhotosOf } from './photos'
import { Places } from './places'

type PieceProps = {
  dough: FloorDough
  piece: number
  entries: readonly OutboxEntry[]
  photos: readonly TabletPhoto[]
  locale: string
  timeZone: string
  onScan(): void
}

/** One piece of a dough, as its slip opens it: what is read of it, and what can hurt somebody in it. */
export function PieceScreen({ dough, piece, photos, onScan, ...shared }: PieceProps) {
  return (
    <div className="narrow">
      <div className="heads">
        <h1>{say(words.dough.titleOfPiece, 'en', { code: dough.code, piece })}</h1>
        <Tap look="quiet" onTap={() => void openDough(dough.id)}>
          {words.dough.whole}
        </Tap>
      </div>
      <div className="acts">
        <Tap look="quiet" onTap={onScan}>
          {stationScan.goNext}
        </Tap>
        <Tap look="quiet" onTap={() => void remember('photographing', { batchId: dough.id, code: dough.code, piece })}>
          {stationPhotos.go}
        </Tap>
      </div>
      <Cautions dough={dough} />
      <Places {...shared} dough={dough} piece={piece} />
      <PhotosOf {...{ photos, piece }} batchId={dough.id} locale={shared.locale} timeZone={shared.timeZone} />
    </div>
  )
}
