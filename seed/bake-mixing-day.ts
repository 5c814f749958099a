import type { Caller } from '../lib/kitchen/caller'
import { getShift } from '../lib/kitchen/shifts/get-shift'
import { getPlan } from '../lib/kitchen/trials/get-plan'
import { openKey } from '../lib/kitchen/trials/open-key'
import { getWeighOut } from '../lib/kitchen/trials/get-weigh-out'
import { minuteMs } from './bakery-clock'
import type { BakedTrial } from './baked-trials'
import type { Crew, PersonKey } from './crew'
import { stepsOfDough, type DoughToBake } from './dough-steps'
import { must } from './must'
import { simulatedDough } from './simulated-bake'

export type MixingDayToBake = {
  trial: BakedTrial
  trialId: string
  /** Number of the mixing day, from 1. */
  day: number
  mixes: PersonKey
  measures: PersonKey
  /** When the doughs begin, in the drawn order; those beyond the list wait. */
  startsAt: readonly Date[]
  /** Nothing is done from here on: the doughs stay where they are then. */
  until?: Date
}

/** Between the beginnings of two doughs of a mixing day. */
const staggerMin = 35

/** When the doughs of a day begin that follow one another. */
export function oneAfterAnother(start: Date, doughs: number): Date[] {
  return Array.from({ length: doughs }, (_, place) => new Date(start.getTime() + place * staggerMin * minuteMs))
}

/** Bakes a mixing day of a trial by the shift's real commands, in the drawn order, each step by whoever is on. */
export async function bakeMixingDay(crew: Crew, day: MixingDayToBake): Promise<void> {
  const [first] = day.startsAt
  if (!first) return
  const doughs = await doughsOf(await crew(day.mixes, first), day)
  const steps = doughs
    .flatMap(stepsOfDough)
    .filter(({ at }) => !day.until || at < day.until)
    .sort((a, b) => a.at.getTime() - b.at.getTime())
  for (const { at, who, run } of steps) await run(await crew(who, at))
}

/** The doughs of the day that are to be begun, with what will be read of them. */
async function doughsOf(
  caller: Caller,
  { trial, trialId, day, mixes, measures, startsAt }: MixingDayToBake,
): Promise<DoughToBake[]> {
  const { plan, trial: toMix } = must(await getPlan.call(caller, { trialId }))
  const onFloor = must(await getShift.call(caller, {})).trials.rows.find(({ id }) => id === trialId)
  // Whoever mixes weighs out by the sheets, which say which dough a code stands for.
  must(await openKey.call(caller, { trialId, planHash: toMix.planHash }))
  const { arms } = must(await getWeighOut.call(caller, { trialId }))
  const key = (arms ?? []).flatMap(({ position, batches }) => batches.map(({ code }) => [code, position] as const))
  const armOf = new Map(key)
  const ofDay = plan.order?.batches.filter((batch) => batch.day === day) ?? []
  const { scalingMassG, doughTempC, proofTimeS, mixTimeS, bulkTimeS, bakeTimeS } = plan.process
  const simulated = { ...trial, process: { scalingMassG, doughTempC, proofTimeMin: proofTimeS / 60 } }
  return startsAt.map((startAt, i) => {
    const planned = ofDay[i]
    const batchId = onFloor?.batches.find(({ code }) => code === planned?.code)?.id
    const arm = armOf.get(planned?.code ?? '')
    if (!planned || batchId === undefined || arm === undefined)
      throw new Error(`mixing day ${day} of trial ${trialId} has no dough ${i + 1} on the floor`)
    const copy = ofDay.slice(0, i + 1).filter(({ code }) => armOf.get(code) === arm).length
    const water =
      plan.arms
        .find(({ position }) => position === arm)
        ?.lines.filter(
          ({ kind, stageId }) =>
            kind === 'water' && plan.stages.some((stage) => stage.id === stageId && stage.kind === 'final_dough'),
        ) ?? []
    return {
      batchId,
      startAt,
      mixes,
      measures,
      process: { mixTimeMin: mixTimeS / 60, bulkTimeMin: bulkTimeS / 60, bakeTimeMin: bakeTimeS / 60 },
      readings: simulatedDough(simulated, {
        arm,
        day,
        copy,
        plannedWaterG: water.reduce((sum, { weighedG }) => sum + weighedG, 0),
        reader: measures,
      }),
      isWritten: trial.weighedDays.includes(day),
      mishap: trial.mishaps.find((mishap) => mishap.day === day && mishap.arm === arm),
    }
  })
}
