import { db } from '@/lib/db/client'
import { textOfPlan } from '@/lib/documents/plan/text-of-plan'
import { drawUpPlan } from '@/lib/kitchen/trials/draw-up-plan'
import type { Plan } from '@/lib/kitchen/trials/plan-types'
import { doseOf, plannedFacts } from './plan-facts'

/** A dough as an order of baking names it. */
export type DrawnDough = { code: string; day: number; place: number; arm: number }

/**
 * The text of a plan whose arms hold the lines that were planted for a trial; all else of it is invented.
 * @param drawn the doughs of its order; left out, none were drawn
 * @param isDosed whether what the control has not is a dose, so that a dough is out of its arm where that is off
 */
export async function planOfRows(
  bakeryId: string,
  trialId: string,
  drawn?: readonly DrawnDough[],
  isDosed = false,
): Promise<{ planText: string; planHash: string }> {
  const arms = await db().arm.findMany({
    where: { bakeryId, trialId },
    select: {
      position: true,
      name: true,
      lines: {
        select: {
          stageId: true,
          ingredientId: true,
          controlMassG: true,
          massG: true,
          weighedG: true,
          stage: { select: { kind: true, name: true } },
          ingredient: { select: { name: true, kind: true } },
        },
        orderBy: { position: 'asc' },
      },
    },
    orderBy: { position: 'asc' },
  })
  const plan = drawUpPlan(plannedFacts({ declared: { kind: 'look_only' } }), null)
  const stages = new Map(
    arms.flatMap(({ lines }) => lines.map(({ stageId, stage }) => [stageId, { id: stageId, ...stage }])),
  )
  const { text, hash } = textOfPlan({
    ...plan,
    ...(drawn && {
      order: {
        method: 'planted',
        seed: 'seed',
        batches: drawn.map((dough) => ({ ...dough, cleanDownOf: [] })),
        cleanDownAfterDay: [],
      },
    }),
    scale: null,
    scales: [],
    stages: [...stages.values()],
    arms: arms.map(({ position, name, lines }) => ({
      ...plan.arms[0]!,
      position,
      name,
      doses: isDosed ? lines.filter(({ controlMassG }) => controlMassG === 0).map(doseOfRow) : [],
      lines: lines.map(({ stageId, ingredientId, ingredient, controlMassG, massG, weighedG }) => ({
        stageId,
        ingredientId,
        ingredient: ingredient.name,
        kind: ingredient.kind,
        dose: null,
        controlG: controlMassG,
        exactG: massG,
        weighedG,
        scaleId: null,
        changeG: massG - controlMassG,
        atBound: null,
      })),
    })),
  })
  return { planText: text, planHash: hash }
}

type Row = { ingredientId: string; ingredient: { name: string }; massG: number }

function doseOfRow({ ingredientId, ingredient, massG }: Row): Plan['arms'][number]['doses'][number] {
  return {
    ...doseOf(ingredientId, massG),
    ingredient: ingredient.name,
    activeName: null,
    activeShare: null,
    insteadOf: null,
    controlG: 0,
    inAllG: massG,
    removedG: 0,
    productG: massG,
    productPctFlour: 0,
    weighing: null,
  }
}
