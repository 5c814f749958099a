import { say } from '../../words/say'
import { station as words } from '../../words/en/station'
import type { FloorDough } from '../keep/facts'
import { openDough } from '../keep/tablet'
import type { OutboxEntry } from '../outbox/entry'
import { Tap } from '../ui/tap'
import { Cautions } from './cautions'
import { Places } from './places'

type PieceProps = {
  dough: FloorDough
  piece: number
  entries: readonly OutboxEntry[]
  locale: string
  timeZone: string
}

/** One piece of a dough, as its slip opens it: what is read of it, and what can hurt somebody in it. */
export function PieceScreen({ dough, piece, ...shared }: PieceProps) {
  return (
    <div className="narrow">
      <div className="heads">
        <h1>{say(words.dough.titleOfPiece, 'en', { code: dough.code, piece })}</h1>
        <Tap look="quiet" onTap={() => void openDough(dough.id)}>
          {words.dough.whole}
        </Tap>
      </div>
      <Cautions dough={dough} />
      <Places {...shared} dough={dough} piece={piece} />
    </div>
  )
}
