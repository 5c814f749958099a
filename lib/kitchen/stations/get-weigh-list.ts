import 'server-only'
import { z } from 'zod'
import { levelOf } from '../../auth/rights'
import { dayInZone } from '../day-in-zone'
import { query } from '../query'
import { mayCorrect } from '../readings/rules'
import { Refusal } from '../refusal'
import { knowsDough } from '../trials/knows-dough'
import { isFrozen, isOpen } from '../trials/rules'
import { lotsToWeigh } from '../weighings/lots-to-weigh'
import { weighListOfBatch } from '../weighings/weigh-list-of-batch'
import { weighingOfBatch } from '../weighings/weighings-of-batch'

/**
 * What one dough weighs, for a tablet: its lines with target, tolerance, scale and what was written, and the bakery's
 * scales, one of which may take another's place. The weights say which dough it is, so they are for whoever opened its
 * key or its trial's, and the record keeps who did.
 * Refuses: not-found, batch-not-begun, batch-not-baked, dough-key-closed, plan-unreadable.
 */
export const getWeighList = query({
  name: 'stations.get-weigh-list',
  input: z.strictObject({ batchId: z.uuid() }),
  right: 'read-shift',
  async run({ db, actor, now, input: { batchId } }) {
    const { bakeryId, personId } = actor
    const [batch, { timeZone, ...bakery }, scales] = await Promise.all([
      db.batch.findUnique({
        where: { bakeryId_id: { bakeryId, id: batchId } },
        select: {
          id: true,
          code: true,
          state: true,
          arm: {
            select: { position: true, lines: { select: { ingredient: { select: { id: true, dustCaution: true } } } } },
          },
          trial: {
            select: {
              state: true,
              planText: true,
              planHash: true,
              openedKeys: { where: { personId }, select: { planHash: true } },
            },
          },
          opened: { where: { personId }, select: { at: true } },
          weighings: { select: weighingOfBatch },
        },
      }),
      db.bakery.findUniqueOrThrow({
        where: { bakeryId },
        select: { massUnits: true, temperatureUnits: true, locale: true, timeZone: true },
      }),
      db.equipment.findMany({
        where: { bakeryId, kind: 'scale', endedAt: null },
        select: { id: true, name: true, leastG: true, mostG: true, resolutionG: true },
        orderBy: [{ name: 'asc' }, { id: 'asc' }],
      }),
    ])
    if (!batch || !isFrozen(batch.trial.state)) throw new Refusal('not-found')
    const { arm, trial, opened, weighings } = batch
    if (batch.state === 'waiting') throw new Refusal('batch-not-begun')
    if (batch.state === 'not_baked') throw new Refusal('batch-not-baked')
    if (!knowsDough({ trial, opened })) throw new Refusal('dough-key-closed')
    const level = levelOf(actor, 'correct-reading')
    const lots = await lotsToWeigh(db, bakeryId, trial, dayInZone(now, timeZone))
    const list = weighListOfBatch({
      plan: trial,
      arm: arm.position,
      entries: weighings,
      lots,
      dayOf: (at) => dayInZone(at, timeZone),
      mayPutRight: ({ person, takenAt, receivedAt }) =>
        isOpen(trial.state) &&
        mayCorrect({ level, personId, reading: { personId: person.id, takenAt, receivedAt }, now }),
    })
    if (!list) throw new Refusal('plan-unreadable')
    const dusty = new Set(arm.lines.flatMap(({ ingredient }) => (ingredient.dustCaution ? [ingredient.id] : [])))
    return {
      batchId: batch.id,
      code: batch.code,
      bakery,
      lines: list.lines.map((line) => ({
        ...line,
        isDusty: dusty.has(line.ingredient.id),
        isAllergensUnknown: !lots.has(line.ingredient.id),
      })),
      premixes: list.premixes,
      scales: scales.flatMap(({ resolutionG, mostG, ...scale }) =>
        resolutionG === null || mostG === null ? [] : [{ ...scale, stepG: resolutionG, mostG }],
      ),
    }
  },
})
