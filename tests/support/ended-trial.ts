import { createHash } from 'node:crypto'
import { v7 as uuid } from 'uuid'
import { db } from '../../lib/db/client'
import { decidePlan } from '../../lib/kitchen/trials/decide-plan'
import { draftTrial } from '../../lib/kitchen/trials/draft-trial'
import { proposePlan } from '../../lib/kitchen/trials/propose-plan'
import { callerOf, testNow, valueOf, type TestBakery, type TestPerson } from './bakery'
import { closeAsItIs } from './close-as-it-is'
import { makeTrialStores, trialContentOf, type TrialStores } from './trials'

export type EndedTrial = {
  stores: TrialStores
  trialId: string
  number: number
  revision: number
  /** By position: control, malt 0.6 %, yoghurt 10 % (which brings milk). */
  armIds: string[]
  /** Masses of one dough as they were planned, g, by arm. */
  plannedG: { stageId: string; ingredientId: string; massG: number }[][]
}

/** Volume in mL of a loaf of 400 g: malt lifts it by about a tenth, yoghurt by next to nothing. */
const volumeOf = (arm: number, day: number, loaf: number) =>
  1600 + 20 * day + 7 * loaf + ((day + arm) % 3) * 4 + [0, 160, 8][arm]!

/**
 * An invented trial that was planned and approved by the real commands, with a signed formula and priced stores
 * behind it, and then baked straight in the tables: three days, four loaves of each dough, read twice.
 * @param q.unmeasured position of an arm whose doughs were all lost
 * @param q.spoilt loaves of each test dough that were no good; none unless given
 * @param q.content what is declared otherwise
 * @param q.hugeMl by which the loaves of the first control of the second day are larger
 * @param q.stores to bake for another time, of a bakery that has them
 */
export async function makeEndedTrial(
  bakery: TestBakery,
  q: {
    now?: Date
    state?: 'closed' | 'stopped' | 'baking'
    unmeasured?: number
    stores?: TrialStores
    spoilt?: number
    content?: Partial<ReturnType<typeof trialContentOf>>
    hugeMl?: number
  } = {},
): Promise<EndedTrial> {
  const { now = testNow, state = 'closed' } = q
  const { bakeryId } = bakery
  const as = (person: TestPerson) => callerOf(person.sessionSecret, now, person.password)
  const stores = q.stores ?? (await makeTrialStores(bakery, now))
  const { trialId, number } = valueOf(
    await draftTrial.call(as(bakery.late), {
      content: { ...trialContentOf(stores), ...q.content },
    }),
  )
  const { planHash, revision } = valueOf(await proposePlan.call(as(bakery.late), { trialId, seenRevision: 1 }))
  valueOf(
    await decidePlan.call(as(bakery.owner), {
      trialId,
      seenRevision: revision,
      planHash,
      verdict: 'approved',
      note: '',
    }),
  )

  const batches = await db().batch.findMany({
    where: { bakeryId, trialId, kind: 'dough' },
    select: { id: true, arm: { select: { position: true } }, mixingDay: { select: { number: true } } },
    orderBy: { plannedOrder: 'asc' },
  })
  const huge = batches.find(({ arm, mixingDay }) => arm.position === 0 && mixingDay.number === 2)
  const reading = (batchId: string, code: string, piece: number | null, repeat: number, value: number) => ({
    bakeryId,
    id: uuid(),
    trialId,
    batchId,
    piece,
    measureId: stores.measureIds[code]!,
    repeat,
    value,
    valueEntered: String(value),
    unitEntered: 'g',
    personId: bakery.early.personId,
    takenAt: now,
    receivedAt: now,
    contentHash: createHash('sha256').update(`${batchId} ${code} ${piece} ${repeat} ${value}`).digest('hex'),
  })
  for (const { id, arm, mixingDay } of batches) {
    const isLost = arm.position === q.unmeasured
    await db().batch.update({
      where: { bakeryId_id: { bakeryId, id } },
      data: isLost
        ? { state: 'lost', stateWhy: 'dropped', begunAt: now, doneAt: now }
        : {
            state: 'measured',
            piecesMade: 4,
            piecesGood: arm.position === 0 ? 4 : 4 - (q.spoilt ?? 0),
            begunAt: now,
            doneAt: now,
          },
    })
    if (isLost) continue
    await db().reading.createMany({
      data: [
        reading(id, 'dough-temp', null, 1, 26),
        ...[1, 2, 3, 4].flatMap((loaf) => {
          const volume = volumeOf(arm.position, mixingDay.number, loaf) + (id === huge?.id ? (q.hugeMl ?? 0) : 0)
          return [
            reading(id, 'loaf-mass', loaf, 1, 400),
            reading(id, 'loaf-volume', loaf, 1, volume),
            reading(id, 'loaf-volume', loaf, 2, volume + 4),
          ]
        }),
      ],
    })
  }
  await db().trial.update({ where: { bakeryId_id: { bakeryId, id: trialId } }, data: { state: 'baking' } })
  if (state !== 'baking')
    await closeAsItIs(bakery, trialId, now, state, state === 'stopped' ? 'The oven is broken.' : null)
  const trial = await db().trial.findUniqueOrThrow({
    where: { bakeryId_id: { bakeryId, id: trialId } },
    select: { revision: true },
  })

  const arms = await db().arm.findMany({
    where: { bakeryId, trialId },
    select: {
      id: true,
      lines: { select: { stageId: true, ingredientId: true, massG: true }, orderBy: { position: 'asc' } },
    },
    orderBy: { position: 'asc' },
  })
  return {
    stores,
    trialId,
    number,
    revision: trial.revision,
    armIds: arms.map(({ id }) => id),
    plannedG: arms.map(({ lines }) => lines),
  }
}
