import 'server-only'
import { z } from 'zod'
import { levelOf } from '../../auth/rights'
import type { Db } from '../../db/client'
import { readPlan } from '../../documents/plan/read-plan'
import { query } from '../query'
import { isToConfirm } from '../stores/is-to-confirm'
import { knowsDough } from '../trials/knows-dough'
import { linesOfPlan } from './lines-of-plan'

/** So many are shown, those that came first; the others wait behind them. */
const mostShown = 50
/** Photos of one label. */
const mostPhotos = 4

/**
 * The lots of an ingredient that were said at the bench and are to be confirmed, those that came first at the top, with
 * the photos of their labels. Who said one, when and at which tablet is left out where it would tell which dough it was
 * for: where not all doughs of the trial have some of the line, from everybody who does not know that dough. Of an
 * ingredient that is not there, there are none.
 */
export const listLotsToConfirm = query({
  name: 'weighings.list-lots-to-confirm',
  input: z.strictObject({ ingredientId: z.uuid() }),
  right: 'read-work',
  async run({ db, actor, input: { ingredientId } }) {
    const { bakeryId, personId } = actor
    const where = { bakeryId, ingredientId, ...isToConfirm }
    const [count, rows, others] = await Promise.all([
      db.lot.count({ where }),
      db.lot.findMany({
        where,
        select: {
          id: true,
          code: true,
          enteredAt: true,
          enteredBy: { select: { name: true } },
          station: { select: { name: true } },
          saidWith: {
            select: {
              stageId: true,
              part: true,
              batch: {
                select: {
                  opened: { where: { personId }, select: { at: true } },
                  trial: {
                    select: {
                      state: true,
                      planText: true,
                      planHash: true,
                      openedKeys: { where: { personId }, select: { planHash: true } },
                    },
                  },
                },
              },
            },
          },
        },
        orderBy: [{ enteredAt: 'asc' }, { id: 'asc' }],
        take: mostShown,
      }),
      db.lot.findMany({
        where: { bakeryId, ingredientId, endedAt: null, NOT: isToConfirm },
        select: { id: true, code: true },
        orderBy: [{ receivedOn: 'desc' }, { id: 'desc' }],
        take: mostShown,
      }),
    ])
    const photos = await photosOfLabels(db, bakeryId, ingredientId, rows)
    return {
      count,
      /** That one of them may be, the latest delivery first. */
      others,
      mayConfirm: levelOf(actor, 'edit-stores') === 'yes',
      rows: rows.map(({ id, code, enteredAt, enteredBy, station, saidWith }) => ({
        id,
        code,
        said:
          saidWith && (knowsDough(saidWith.batch) || isInEveryDough({ ...saidWith, ingredientId }))
            ? { who: enteredBy.name, at: enteredAt, station: station?.name ?? null }
            : null,
        photos: photos.filter(({ lotId }) => lotId === id).map((photo) => photo.id),
      })),
    }
  },
})

type SaidOf = {
  stageId: string
  ingredientId: string
  part: string
  batch: { trial: { planText: string | null; planHash: string | null } }
}

/** Whether every dough of its trial has some of a line: that somebody weighed it then tells nothing. */
function isInEveryDough({ stageId, ingredientId, part, batch: { trial } }: SaidOf): boolean {
  const { planText, planHash } = trial
  const read = planText === null || planHash === null ? null : readPlan(planText, planHash)
  if (read?.outcome !== 'read') return false
  const line = linesOfPlan(read.plan).find(
    (each) => each.stage.id === stageId && each.ingredient.id === ingredientId && each.part === part,
  )
  return line?.targets.every(({ massG }) => massG > 0) ?? false
}

/** Of each label the photos that were taken of it first. */
async function photosOfLabels(
  db: Db,
  bakeryId: string,
  ingredientId: string,
  lots: readonly { id: string }[],
): Promise<{ id: string; lotId: string }[]> {
  if (lots.length === 0) return []
  const ids = JSON.stringify(lots.map(({ id }) => id))
  return db.$queryRaw<{ id: string; lotId: string }[]>`
    SELECT id, "lotId" FROM (
      SELECT photo.id, lot.id AS "lotId", row_number() OVER (PARTITION BY lot.id ORDER BY photo.received_at, photo.id) AS place
      FROM lot
      JOIN photo ON photo.bakery_id = lot.bakery_id AND photo.ingredient_id = lot.ingredient_id
        AND lower(photo.lot_code) = lower(lot.code)
      WHERE lot.bakery_id = ${bakeryId}::uuid AND lot.ingredient_id = ${ingredientId}::uuid
        AND lot.id IN (SELECT value::uuid FROM jsonb_array_elements_text(${ids}::jsonb))
    ) AS taken
    WHERE place <= ${mostPhotos}
    ORDER BY "lotId", place`
}
