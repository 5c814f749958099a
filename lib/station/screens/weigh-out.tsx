import type { KeptBy } from '../keep/keep-entry'
import type { At } from '../keep/tablet'
import type { KeptList } from '../keep/weigh-facts'
import type { OutboxEntry } from '../outbox/entry'
import { linesWithEntries } from '../outbox/stand-of-line'
import { FixLine } from './fix-line'
import { WeighLine } from './weigh-line'
import { WeighLines } from './weigh-lines'

type WeighOutProps = {
  kept: KeptList
  at: Pick<At, 'weigh' | 'isFix'>
  by: KeptBy
  pinAt: number
  correctsAny: boolean
  entries: readonly OutboxEntry[]
  locale: string
  timeZone: string
}

/** A dough is weighed out: all of its lines, or the one that is open. */
export function WeighOut({ kept, at, entries, by, pinAt, correctsAny, ...clock }: WeighOutProps) {
  const lines = linesWithEntries(kept.list, entries)
  const line = lines.find(({ key }) => key === at.weigh)
  if (!line) return <WeighLines kept={kept} lines={lines} {...clock} />
  const shared = { kept, lines, by, ...clock, key: `${kept.batchId} ${line.key} ${by.personId}` }
  const { key, ...opened } = shared
  return at.isFix && line.stands ? (
    <FixLine key={key} {...opened} line={{ ...line, stands: line.stands }} pinAt={pinAt} />
  ) : (
    <WeighLine key={key} {...opened} line={line} correctsAny={correctsAny} />
  )
}
