import { massFromUnit, type MassUnit } from '../../words/format/mass'
import type { WeighLine, WeighList } from '../keep/weigh-facts'
import type { EntryOf, EntryState, OutboxEntry } from './entry'
import { holds } from './holds'
import { idOfSent } from './lots-of-line'

export type LineStanding = NonNullable<WeighLine['stands']> & { state: EntryState }

export type StoodLine = WeighLine & {
  key: string
  /** What stands of it: what this tablet kept, else what the book had when it was last asked, put right by what this tablet kept. */
  stands: LineStanding | null
  /** What came when something stood there already: the book keeps it aside. */
  lost: Pick<LineStanding, 'how' | 'massG'>[]
}

type Weighing = EntryOf<'weighing'>

/** One name for a line of a dough, whoever tells of it. */
export function lineKey({ stageId, ingredientId, part }: Pick<WeighLine, 'stageId' | 'ingredientId' | 'part'>): string {
  return `${stageId} ${ingredientId} ${part}`
}

/** The lines of a dough with what stands of each; what the book refused stands nowhere. */
export function linesWithEntries({ batchId, lines }: WeighList, entries: readonly OutboxEntry[]): StoodLine[] {
  const own = entries.filter((entry) => entry.kind === 'weighing').filter(({ payload }) => payload.batchId === batchId)
  return lines.map((line) => {
    const key = lineKey(line)
    const ofLine = own.filter(({ payload }) => lineKey(payload) === key)
    const first = ofLine.find((entry) => !entry.payload.supersedesId && holds(entry))
    const inBook: LineStanding | null = line.stands && { ...line.stands, state: 'book' }
    // Once the book says what stands there, that does: this tablet's may have been corrected since, or come too late.
    const isOpen = first && first.state !== 'book' && first.state !== 'aside'
    let stands = first && (isOpen || !inBook) ? standing(first) : inBook
    for (let next = nextOf(stands, ofLine); next; next = nextOf(stands, ofLine)) stands = standing(next)
    const lost = ofLine.filter(({ id, state }) => state === 'aside' && id !== stands?.id).map(standing)
    return { ...line, key, stands, lost }
  })
}

function standing({ id, personName, personId, state, payload, shown }: Weighing): LineStanding {
  const { how, mass, unit, takenAt, lots } = payload
  const inG = (typed: string | null | undefined) =>
    typed === null || typed === undefined ? null : massFromUnit(Number(typed), (unit ?? 'g') as MassUnit)
  return {
    id,
    who: personName,
    personId,
    at: takenAt,
    how,
    massG: how === 'weighed' ? inG(mass) : null,
    lots: (lots ?? []).map((lot, at) => ({
      id: idOfSent(lot),
      code: shown.lots?.[at]?.code ?? lot.code ?? '',
      isPast: shown.lots?.[at]?.isPast ?? false,
      ...(shown.lots?.[at]?.isToConfirm ? { isToConfirm: true } : {}),
      ...(lot.lotId ? {} : { isTyped: true }),
      massG: inG(lot.mass),
    })),
    state,
  }
}

/** What takes the place of what stands: one that lost takes nobody's. */
function nextOf(stands: LineStanding | null, ofLine: readonly Weighing[]): Weighing | undefined {
  return ofLine.find(
    (entry) => stands !== null && holds(entry) && entry.state !== 'aside' && entry.payload.supersedesId === stands.id,
  )
}
