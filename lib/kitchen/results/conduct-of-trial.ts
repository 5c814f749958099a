import 'server-only'
import type { Db } from '../../db/client'
import { isOwnSlip } from '../conduct/is-own-slip'
import { oddTime, type OddTime } from '../conduct/odd-time'

type Place = {
  /** Code of the dough. */
  code: string
  measure: { code: string | null; name: string }
  piece: number | null
  factorLevel: string | null
}

type AsEntered = { value: string; unit: string; piece: number | null; repeat: number }

/** A reading that was corrected: what it was, what took its place, who, when and why. */
type Correction = Place & {
  id: string
  before: AsEntered
  after: AsEntered
  who: string
  at: Date
  reason: string
  /** Put right by whoever made it, within ten minutes. */
  isOwnSlip: boolean
}

/** What was noted at a dough as it happened, also at one that counts. */
type NotedCause = { id: string; code: string; what: string; noticedAt: Date; at: Date; who: string }

type Conduct = {
  corrections: Correction[]
  causes: NotedCause[]
  /** Places that were read more often than the plan asks for. */
  furtherRepeats: (Place & { have: number; of: number })[]
  /** Doughs with readings whose device told an odd time. */
  oddTimes: { code: string; kind: OddTime; count: number }[]
}

/**
 * How the readings of a trial came about, beside what they say: whatever somebody did to them that the plan does not.
 * By the codes of the doughs, so that it may be told before the result is. Whether whoever corrected knew the key is
 * not known here yet.
 */
export async function conductOfTrial(db: Db, bakeryId: string, trialId: string): Promise<Conduct> {
  const [corrected, causes, furtherRepeats, timed] = await Promise.all([
    correctedReadings(db, bakeryId, trialId),
    db.batchCause.findMany({
      where: { bakeryId, trialId },
      select: {
        id: true,
        what: true,
        noticedAt: true,
        at: true,
        person: { select: { name: true } },
        batch: { select: { code: true } },
      },
      orderBy: [{ at: 'asc' }, { id: 'asc' }],
    }),
    furtherRepeatsOf(db, bakeryId, trialId),
    timesToLookAt(db, bakeryId, trialId),
  ])
  return {
    corrections: corrected.flatMap(({ supersedes: wrong, ...right }): Correction[] =>
      wrong === null
        ? []
        : [
            {
              id: right.id,
              code: right.batch.code,
              measure: right.measure,
              piece: wrong.piece,
              factorLevel: wrong.factorLevel,
              before: asEntered(wrong),
              after: asEntered(right),
              who: right.person.name,
              at: right.receivedAt,
              reason: right.reason ?? '',
              isOwnSlip: isOwnSlip(wrong, right),
            },
          ],
    ),
    causes: causes.map(({ batch, person, ...cause }) => ({ ...cause, code: batch.code, who: person.name })),
    furtherRepeats,
    oddTimes: countOddTimes(timed),
  }
}

function correctedReadings(db: Db, bakeryId: string, trialId: string) {
  const entered = {
    piece: true,
    factorLevel: true,
    repeat: true,
    valueEntered: true,
    unitEntered: true,
    receivedAt: true,
    person: { select: { id: true, name: true } },
  } as const
  return db.reading.findMany({
    where: { bakeryId, trialId, supersedesId: { not: null } },
    select: {
      id: true,
      ...entered,
      reason: true,
      batch: { select: { code: true } },
      measure: { select: { code: true, name: true } },
      supersedes: { select: entered },
    },
    orderBy: [{ receivedAt: 'asc' }, { id: 'asc' }],
  })
}

function asEntered(reading: {
  valueEntered: string
  unitEntered: string
  piece: number | null
  repeat: number
}): AsEntered {
  return { value: reading.valueEntered, unit: reading.unitEntered, piece: reading.piece, repeat: reading.repeat }
}

async function furtherRepeatsOf(db: Db, bakeryId: string, trialId: string): Promise<Conduct['furtherRepeats']> {
  const rows = await db.$queryRaw<
    {
      code: string
      measureCode: string | null
      name: string
      piece: number | null
      factorLevel: string | null
      have: number
      of: number
    }[]
  >`
    SELECT batch.code, measure.code AS "measureCode", measure.name, place.piece, place.factor_level AS "factorLevel", count(*)::int AS have, measure.repeats AS of
    FROM reading_place place
    JOIN batch ON batch.bakery_id = place.bakery_id AND batch.id = place.batch_id
    JOIN measure ON measure.bakery_id = place.bakery_id AND measure.id = place.measure_id
    WHERE place.bakery_id = ${bakeryId}::uuid AND batch.trial_id = ${trialId}::uuid
    GROUP BY batch.code, measure.code, measure.name, measure.position, measure.repeats, place.piece, place.factor_level
    HAVING count(*) > measure.repeats
    ORDER BY batch.code, measure.position, place.piece, place.factor_level`
  return rows.map(({ measureCode, name, ...row }) => ({ ...row, measure: { code: measureCode, name } }))
}

type Timed = { code: string; takenAt: Date; receivedAt: Date; begunAt: Date | null }

/** Readings that hold and were not taken between the begin of their dough and their receipt; by how much, the rule judges. */
function timesToLookAt(db: Db, bakeryId: string, trialId: string): Promise<Timed[]> {
  return db.$queryRaw<Timed[]>`
    SELECT batch.code, reading.taken_at AS "takenAt", reading.received_at AS "receivedAt", batch.begun_at AS "begunAt"
    FROM reading
    JOIN batch ON batch.bakery_id = reading.bakery_id AND batch.id = reading.batch_id
    WHERE reading.bakery_id = ${bakeryId}::uuid AND reading.trial_id = ${trialId}::uuid
      AND (reading.taken_at > reading.received_at OR reading.taken_at < batch.begun_at)
      AND NOT EXISTS (SELECT 1 FROM reading later WHERE later.bakery_id = reading.bakery_id AND later.supersedes_id = reading.id)
    ORDER BY batch.code`
}

function countOddTimes(timed: readonly Timed[]): Conduct['oddTimes'] {
  const counts = new Map<string, Conduct['oddTimes'][number]>()
  for (const { code, ...times } of timed) {
    const kind = oddTime(times)
    if (kind === null) continue
    const key = `${code} ${kind}`
    counts.set(key, { code, kind, count: (counts.get(key)?.count ?? 0) + 1 })
  }
  return [...counts.values()]
}
