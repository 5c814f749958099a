import type { KeptBy } from '../keep/keep-entry'
import type { At } from '../keep/tablet'
import type { KeptList } from '../keep/weigh-facts'
import type { OutboxEntry } from '../outbox/entry'
import { knowsOf } from '../outbox/knows-of'
import { lastLot, typedLot } from '../outbox/lots-of-line'
import { linesWithEntries } from '../outbox/stand-of-line'
import type { TabletPhoto } from '../photo/tablet-photo'
import { FixLine } from './fix-line'
import { HeldWater } from './held-water'
import { WeighLine } from './weigh-line'
import { WeighLines } from './weigh-lines'

type WeighOutProps = {
  kept: KeptList
  at: Pick<At, 'weigh' | 'isFix' | 'water'>
  by: KeptBy
  pinAt: number
  /** All that are on the tablet, of which somebody is told what they know. */
  lists: readonly KeptList[]
  correctsAny: boolean
  entries: readonly OutboxEntry[]
  photos: readonly TabletPhoto[]
  locale: string
  timeZone: string
}

/** A dough is weighed out: all of its lines, or the one that is open. */
export function WeighOut({ kept, at, entries, photos, lists, by, pinAt, correctsAny, ...clock }: WeighOutProps) {
  const lines = linesWithEntries(kept.list, entries)
  const line = lines.find(({ key }) => key === at.weigh)
  if (!line) return <WeighLines kept={kept} lines={lines} {...clock} />
  const last = lastLot(
    line,
    entries.filter((entry) => knowsOf(entry, by.personId, lists)),
  )
  const labels = photos.flatMap(({ said: { label } }) =>
    label?.ingredientId === line.ingredientId ? [typedLot(label.code).id] : [],
  )
  const shared = { kept, lines, last, labels, by, ...clock, key: `${kept.batchId} ${line.key} ${by.personId}` }
  const { key, ...opened } = shared
  const { stands } = line
  const wrong = stands && { ...line, stands }
  if (wrong && at.water)
    return <HeldWater key={key} {...{ kept, by, pinAt }} line={wrong} change={at.water} locale={clock.locale} />
  return wrong && at.isFix ? (
    <FixLine key={key} {...opened} line={wrong} pinAt={pinAt} />
  ) : (
    <WeighLine key={key} {...opened} line={line} correctsAny={correctsAny} />
  )
}
