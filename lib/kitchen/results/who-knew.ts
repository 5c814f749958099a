import 'server-only'
import type { Db, Tx } from '../../db/client'
import type { TrialState } from '../../db/generated/enums'
import { knowersOf, type Knower } from '../key/list-knowers'
import { lookersOf, type Looker } from '../key/lookers-of'
import { readByKnowers, whoRead, type ReadRow } from '../key/who-read'
import { isEnded } from '../trials/rules'

type AsText<Row, Times extends keyof Row> = Omit<Row, Times> & Record<Times, string>
type Found = { read: ReadRow[]; knowers: AsText<Knower, 'at'>[]; lookers: AsText<Looker, 'first'>[] }

/** Who knew the key of a trial, who read knowing it, and who looked, by one statement; null for one that has not ended. */
export async function whoKnew(
  db: Db | Tx,
  bakeryId: string,
  { id: trialId, state, planHash }: { id: string; state: TrialState; planHash: string | null },
) {
  if (!isEnded(state)) return null
  const of = { bakeryId, trialId, planHash }
  const [found] = await db.$queryRaw<Found[]>`
    SELECT (SELECT coalesce(json_agg(each), '[]') FROM (${readByKnowers(of)}) AS each) AS read,
      (SELECT coalesce(json_agg(each), '[]') FROM (${knowersOf(of)}) AS each) AS knowers,
      (SELECT coalesce(json_agg(each), '[]') FROM (${lookersOf(of)}) AS each) AS lookers`
  const { read = [], knowers = [], lookers = [] } = found ?? {}
  return {
    ...whoRead(read),
    // JSON has no times.
    knowers: knowers.map((each): Knower => ({ ...each, at: new Date(each.at) })),
    lookers: lookers.map((each): Looker => ({ ...each, first: new Date(each.first) })),
  }
}
