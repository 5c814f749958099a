import 'server-only'
import type { ActorOf } from '../../auth/rights'
import type { Tx } from '../../db/client'
import type { AsideWhy } from '../../db/generated/enums'
import { formatDateTime } from '../../words/format/date'
import { Refusal } from '../refusal'
import type { ReadingAnswer } from './answer-of-reading'
import { judgeReading } from './judge-reading'
import { keepReadings } from './keep-readings'
import { loadReadingFacts } from './load-reading-facts'
import type { ReadingEntry } from './reading-content.input'

/**
 * Keeps one entry of somebody who is there to be told: where an entry from outside would be kept aside, it is refused.
 * Refuses as `judgeReading`, and: reading-clash, reading-there, stale.
 */
export async function keepOneReading(tx: Tx, actor: ActorOf<'log-reading'>, now: Date, entry: ReadingEntry) {
  const verdict = judgeReading(entry, await loadReadingFacts(tx, actor.bakeryId, [entry]), { actor, now })
  if (verdict.outcome === 'aside') throw await refusalOfAside(tx, actor.bakeryId, entry, verdict)
  if (verdict.outcome === 'ready') await keepReadings(tx, [verdict.row])
  const value: ReadingAnswer = verdict.answer
  return { value, note: verdict.outcome === 'ready' ? verdict.note : null }
}

/** What somebody who is there is told where an entry from outside would be kept aside. */
export async function refusalOfAside(
  tx: Tx,
  bakeryId: string,
  entry: ReadingEntry,
  { why, trialId }: { why: AsideWhy; trialId: string },
): Promise<Refusal> {
  switch (why) {
    case 'place_taken':
      return new Refusal('reading-there')
    case 'id_taken':
      return new Refusal('reading-clash')
    case 'reading_aside':
      return new Refusal('not-found')
    case 'corrected_meanwhile':
      return 'supersedesId' in entry ? correctedBy(tx, bakeryId, entry.supersedesId) : new Refusal('stale-moved-on')
    case 'trial_closed':
      return overAlready(tx, bakeryId, trialId)
    default:
      return why satisfies never
  }
}

/** At the desk somebody proposes an amendment where the result stands. */
async function overAlready(tx: Tx, bakeryId: string, trialId: string): Promise<Refusal> {
  const { state } = await tx.trial.findUniqueOrThrow({
    where: { bakeryId_id: { bakeryId, id: trialId } },
    select: { state: true },
  })
  return new Refusal(state === 'stopped' ? 'trial-stopped' : 'trial-closed')
}

/** Says who put what in the place of a reading, and when. */
async function correctedBy(tx: Tx, bakeryId: string, supersedesId: string): Promise<Refusal> {
  const later = await tx.reading.findFirst({
    where: { bakeryId, supersedesId },
    select: { receivedAt: true, person: { select: { name: true } } },
  })
  if (!later) return new Refusal('stale-moved-on')
  const bakery = await tx.bakery.findUniqueOrThrow({ where: { bakeryId }, select: { locale: true, timeZone: true } })
  return new Refusal('stale', { who: later.person.name, at: formatDateTime(later.receivedAt, bakery) })
}
