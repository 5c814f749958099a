import 'server-only'
import { groupBy } from '../../calc/group-by'
import { isOwnSlip } from '../conduct/is-own-slip.input'
import { oddDays, type OddDay } from '../conduct/odd-days'
import { oddTime, type OddTime } from '../conduct/odd-time'
import type { Repair } from '../repairs/repairs-of-trial'
import { currentReadings } from '../readings/current-readings'
import type { TrialContent } from './content-of-trial'

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

export type Conduct = {
  corrections: Correction[]
  /** Places that were read more often than the plan asks for. */
  furtherRepeats: (Place & { have: number; of: number })[]
  /** Doughs with readings whose device told an odd time. */
  oddTimes: { code: string; kind: OddTime; count: number }[]
  /** Mixing days that were spread over several days, or were one. */
  oddDays: OddDay[]
  /** How many readings came in from a file, so that nobody entered them as they were taken. */
  fromFile: number
  /** What was found later, in the order in which it was noted, and who signed it; null where nobody has. */
  foundCauses: FoundCause[]
  /** What was done about losses: doughs baked again, places exchanged, mixing days added. */
  repairs: Repair[]
}

type FoundCause = Pick<TrialContent['found'][number], 'id' | 'object' | 'what'> & {
  batchId: string
  code: string
  who: string
  at: Date
  signed: { who: string; isAlone: boolean } | null
}

/**
 * How the readings of a trial came about, beside what they say: whatever somebody did to them that the plan does not.
 * By the codes of the doughs, so that it may be told before the result is.
 */
export function conductOfTrial({ measures, doughs, readings, found, repairs }: TrialContent): Conduct {
  const codes = new Map(doughs.map(({ id, code }) => [id, code]))
  const codeOf = ({ dough }: Reading) => codes.get(dough) ?? ''
  const measureOf = ({ measure }: Reading): Place['measure'] => {
    const read = measures.find(({ id }) => id === measure)
    return { code: read?.code ?? null, name: read?.name ?? '' }
  }
  const byId = new Map(readings.map((reading) => [reading.id, reading]))
  const holding = currentReadings(
    readings.map((reading) => ({
      ...reading,
      supersedesId: reading.supersedes,
      receivedAt: new Date(reading.receivedAt),
    })),
  ).flatMap(({ id }) => byId.get(id) ?? [])
  const ofDough = groupBy(holding, ({ dough }) => dough)
  return {
    corrections: readings
      .flatMap((right): Correction[] => {
        const wrong = right.supersedes === null ? undefined : byId.get(right.supersedes)
        if (!wrong) return []
        return [
          {
            id: right.id,
            code: codeOf(right),
            measure: measureOf(right),
            piece: wrong.piece,
            factorLevel: wrong.factorLevel,
            before: asEntered(wrong),
            after: asEntered(right),
            who: right.by.name,
            at: new Date(right.receivedAt),
            reason: right.reason ?? '',
            isOwnSlip: isOwnSlip(asTaken(wrong), asTaken(right)),
          },
        ]
      })
      .sort((a, b) => a.at.getTime() - b.at.getTime() || (a.id < b.id ? -1 : 1)),
    furtherRepeats: doughs.flatMap((dough) =>
      measures.flatMap(({ id, repeats }) =>
        [
          ...groupBy(
            (ofDough.get(dough.id) ?? []).filter((reading) => reading.measure === id),
            ({ piece, factorLevel }) => `${piece} ${factorLevel}`,
          ).values(),
        ].flatMap((atPlace) => {
          const [first] = atPlace
          return !first || atPlace.length <= repeats
            ? []
            : [
                {
                  code: dough.code,
                  measure: measureOf(first),
                  piece: first.piece,
                  factorLevel: first.factorLevel,
                  have: atPlace.length,
                  of: repeats,
                },
              ]
        }),
      ),
    ),
    oddTimes: doughs.flatMap(({ id, code, begunAt }) => {
      const kinds = (ofDough.get(id) ?? []).flatMap(
        ({ takenAt, receivedAt }) =>
          oddTime({
            takenAt: new Date(takenAt),
            receivedAt: new Date(receivedAt),
            begunAt: begunAt === null ? null : new Date(begunAt),
          }) ?? [],
      )
      return oddKinds.flatMap((kind) => {
        const count = kinds.filter((each) => each === kind).length
        return count === 0 ? [] : [{ code, kind, count }]
      })
    }),
    oddDays: oddDays(doughs.map(({ day, begunAt }) => ({ day, begunAt: begunAt === null ? null : new Date(begunAt) }))),
    // Only a file's readings have ids of version 5, made from their places; every other door asks for version 7.
    fromFile: readings.filter(({ id }) => id.charAt(14) === '5').length,
    repairs: repairs.map(({ at, ...repair }) => ({ ...repair, at: new Date(at) })),
    foundCauses: found.map(({ id, dough, object, what, by, at, signed }) => ({
      id,
      object,
      what,
      batchId: dough,
      code: codes.get(dough) ?? '',
      who: by.name,
      at: new Date(at),
      signed: signed && { who: signed.by.name, isAlone: signed.as === 'alone' },
    })),
  }
}

const oddKinds: readonly OddTime[] = ['in-the-future', 'before-begun']

type Reading = TrialContent['readings'][number]

function asTaken({ by, receivedAt }: Reading) {
  return { person: by, receivedAt: new Date(receivedAt) }
}

function asEntered({ valueEntered, unitEntered, piece, repeat }: Reading): AsEntered {
  return { value: valueEntered, unit: unitEntered, piece, repeat }
}
