import 'server-only'
import { z } from 'zod'
import { inProduction } from '../formulas/rules'
import { query } from '../query'
import { Refusal } from '../refusal'
import { readContent } from './read-content'
import { watersOf } from './waters-of'

/**
 * What the form of a trial needs: what can be chosen, but for ingredients, which are found by name
 * (stores.find-ingredients), and the draft to change with the names of those it holds, or none for a new one.
 * Refuses: not-found.
 */
export const getTrial = query({
  name: 'trials.get-trial',
  input: z.strictObject({ trialId: z.uuid().nullable() }),
  right: 'propose-trial',
  async run({ db, actor, now, input }) {
    const { bakeryId } = actor
    const present =
      input.trialId === null
        ? null
        : await db.trial.findUnique({
            where: { bakeryId_id: { bakeryId, id: input.trialId } },
            select: { id: true, number: true, state: true, revision: true },
          })
    const content = present && (await readContent(db, bakeryId, present.id))
    if (input.trialId !== null && !content) throw new Refusal('not-found')
    const used = new Set(
      content?.arms.flatMap((arm) =>
        arm.doses.flatMap(({ ingredientId, insteadOfId }) => [
          ingredientId,
          ...(insteadOfId === null ? [] : [insteadOfId]),
        ]),
      ) ?? [],
    )
    const [formulas, measures, ingredients, equipment] = await Promise.all([
      db.formula.findMany({
        where: { bakeryId },
        select: {
          id: true,
          name: true,
          versions: {
            where: { signedAt: { not: null } },
            select: { id: true, number: true, signedAt: true, effectiveAt: true, pieces: true },
          },
        },
        orderBy: { name: 'asc' },
        take: 500,
      }),
      db.measure.findMany({
        where: { bakeryId, endedAt: null },
        select: { id: true, code: true, name: true, unit: true, direction: true },
        orderBy: { position: 'asc' },
        take: 200,
      }),
      db.ingredient.findMany({ where: { bakeryId, id: { in: [...used] } }, select: { id: true, name: true } }),
      db.equipment.findMany({
        where: { bakeryId, kind: { in: ['scale', 'mixer', 'tap_water'] }, endedAt: null },
        select: { id: true, kind: true, name: true, tempC: true, limitC: true },
        orderBy: { name: 'asc' },
        take: 500,
      }),
    ])
    return {
      trial: present && content && { ...present, content },
      formulas: formulas.flatMap(({ id, name, versions }) => {
        const standing = inProduction(versions, now)
        return standing ? [{ id, name, number: standing.number }] : []
      }),
      measures: measures.filter(({ direction }) => direction !== 'none'),
      ingredients,
      scales: equipment.flatMap(({ kind, id, name }) => (kind === 'scale' ? [{ id, name }] : [])),
      tapTempC: watersOf(equipment).tap?.tempC ?? null,
      mixers: equipment.flatMap(({ kind, id, name }) => (kind === 'mixer' ? [{ id, name }] : [])),
    }
  },
})
