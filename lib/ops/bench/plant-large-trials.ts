import { createHash } from 'node:crypto'
import { v7 as uuid } from 'uuid'
import { normalDeviate } from '../../calc/random/normal-deviate'
import { seededRandom } from '../../calc/random/seeded-random'
import { db } from '../../db/client'

export type TrialSize = {
  mixingDays: number
  batchesPerArm: number
  arms: number
  loaves: number
  /** Its doughs are in work, and nothing is read of them yet. */
  isOpen?: true
}

/**
 * Writes trials of a size, ended unless they are to be open, straight into the demo's tables: past the commands, because
 * only the result is looked at, or what is sent to them. Every fifth dough that is no control was lost, in an uneven way, so that comparisons are as dear to
 * work out as they get. Made-up values; each trial has its own.
 * @returns ids of the trials
 */
export async function plantLargeTrials(count: number, size: TrialSize): Promise<string[]> {
  const like = await trialOfDemo()
  const measures = await db().measure.findMany({
    where: { bakeryId: like.bakeryId, code: { in: ['loaf-mass', 'loaf-volume'] } },
    select: { id: true, code: true },
  })
  const first = await db().trial.count({ where: { bakeryId: like.bakeryId } })
  const ids: string[] = []
  for (let i = 1; i <= count; i++)
    ids.push(
      await plantTrial(like, size, first + i, (code) => measures.find((measure) => measure.code === code)?.id ?? ''),
    )
  return ids
}

/** One whose formula, question and control the planted ones share. */
function trialOfDemo() {
  return db().trial.findFirstOrThrow({
    where: { state: 'closed', measure: { code: 'specific-volume' } },
    include: { arms: { where: { position: 0 }, include: { lines: true } } },
  })
}

async function plantTrial(
  { arms: [control], ...like }: Awaited<ReturnType<typeof trialOfDemo>>,
  size: TrialSize,
  number: number,
  measureId: (code: 'loaf-mass' | 'loaf-volume') => string,
): Promise<string> {
  const { bakeryId, proposedById: personId, createdAt: at } = like
  const trialId = uuid()
  const planText = JSON.stringify({ made: 'for the bench', number })
  await db().trial.create({
    data: {
      ...like,
      id: trialId,
      number,
      state: 'draft',
      mixingDays: size.mixingDays,
      batchesPerArm: size.batchesPerArm,
      piecesPerBatch: size.loaves,
      proposedAt: null,
      closedAt: null,
      planText: null,
      planHash: null,
    },
  })
  const armIds = Array.from({ length: size.arms }, () => uuid())
  await db().arm.createMany({
    data: armIds.map((id, position) => ({ bakeryId, id, trialId, position, name: `Dough ${position}`, onTop: false })),
  })
  await db().armLine.createMany({
    data: armIds.flatMap((armId) => (control?.lines ?? []).map((line) => ({ ...line, bakeryId, id: uuid(), armId }))),
  })
  await db().trial.update({
    where: { bakeryId_id: { bakeryId, id: trialId } },
    data: {
      // Readings come to an open trial only; it is ended below.
      state: size.isOpen ? 'approved' : 'baking',
      planText,
      planHash: hashOf(planText),
      proposedAt: at,
    },
  })

  const days = Array.from({ length: size.mixingDays }, (_, i) => ({ bakeryId, id: uuid(), trialId, number: i + 1 }))
  await db().mixingDay.createMany({ data: days })
  const random = seededRandom(`bench ${number}`)
  const doughs = days.flatMap((day) =>
    armIds.flatMap((armId, arm) =>
      Array.from({ length: size.batchesPerArm }, (_, copy) => ({
        id: uuid(),
        armId,
        day,
        isLost: arm > 0 && (7 * day.number + 3 * arm + copy) % 5 === 0,
        volumeMl: 1600 + 10 * arm + 40 * normalDeviate(random),
      })),
    ),
  )
  await db().batch.createMany({
    data: doughs.map(({ id, armId, day, isLost }, i) => ({
      bakeryId,
      id,
      trialId,
      kind: 'dough',
      armId,
      mixingDayId: day.id,
      plannedOrder: (i % (size.arms * size.batchesPerArm)) + 1,
      code: String(101 + i),
      cleanDownBefore: false,
      state: isLost ? 'lost' : size.isOpen ? 'in_work' : 'measured',
      stateWhy: isLost ? 'Made up.' : null,
      piecesMade: size.loaves,
      piecesGood: size.loaves,
      begunAt: at,
      revision: 1,
    })),
  })
  if (size.isOpen) return trialId
  await db().reading.createMany({
    data: doughs
      .filter(({ isLost }) => !isLost)
      .flatMap(({ id: batchId, volumeMl }) =>
        Array.from({ length: size.loaves }, (_, i) => [
          { code: 'loaf-mass' as const, piece: i + 1, value: 400 },
          { code: 'loaf-volume' as const, piece: i + 1, value: volumeMl + 15 * normalDeviate(random) },
        ])
          .flat()
          .map(({ code, piece, value }) => ({
            bakeryId,
            id: uuid(),
            trialId,
            batchId,
            piece,
            measureId: measureId(code),
            repeat: 1,
            value,
            valueEntered: String(value),
            unitEntered: code === 'loaf-mass' ? 'g' : 'mL',
            personId,
            takenAt: at,
            receivedAt: at,
            contentHash: hashOf(`${batchId} ${code} ${piece}`),
          })),
      ),
  })
  await db().trial.update({
    where: { bakeryId_id: { bakeryId, id: trialId } },
    data: { state: 'closed', closedAt: at },
  })
  return trialId
}

function hashOf(text: string): string {
  return createHash('sha256').update(text).digest('hex')
}
