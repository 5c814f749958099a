import 'server-only'
import { learnFriction } from '../../calc/temperature/learn-friction'
import { requiredWaterTemp } from '../../calc/temperature/required-water-temp'
import type { Db } from '../../db/client'
import type { Prisma } from '../../db/generated/client'
import type { BatchState } from '../../db/generated/enums'
import { currentReadings } from '../readings/current-readings'
import { guessedFrictionCPerMin, mostRiseC } from '../trials/water-of-arm'
import { watersOf } from '../trials/waters-of'
import { heatOfLines } from './heat-of-lines'
import { tempsOf } from './temps-of.input'
import {
  firstOfDay,
  frictionOfDough,
  partsOf,
  waterFor,
  waterOf,
  type DoughHeat,
  type WaterFacts,
  type WaterFriction,
} from './tell-water.input'

/** Of fewer doughs nothing is learned; of more than the most the latest are. Common practice, no source. */
const learnedFrom = { least: 4, most: 40 } as const
/** Doughs whose waters are further apart than this get none that is the same for all, °C. Common practice, no source. */
const mostApartC = 0.5
/** A dough that was lost, set aside or never baked teaches nothing. */
const teaching: BatchState[] = ['weighing', 'in_work', 'baked', 'measured']

const trialColumns = {
  id: true,
  mixerId: true,
  mixer: { select: { name: true, frictionCPerMin: true } },
  flourTempC: true,
  roomTempC: true,
  tapTempC: true,
  controlVersion: { select: { doughTempC: true, mixTimeS: true } },
  arms: {
    select: {
      position: true,
      lines: {
        select: {
          weighedG: true,
          stage: { select: { kind: true } },
          ingredient: { select: { kind: true, figures: { select: { figure: true, gPer100G: true } } } },
        },
      },
    },
    orderBy: { position: 'asc' },
  },
} satisfies Prisma.TrialSelect
type TrialRow = Prisma.TrialGetPayload<{ select: typeof trialColumns }>

/**
 * What the water of trials' doughs is told by. It is worked out of the control's lines alone, for every dough alike, and
 * so is what is learned: what a tablet shows tells nobody which dough is which. Where the doughs of a trial differ so much
 * that one water would not do for all, none is told, and nothing is learned of them.
 * @param day the bakery's day: what was mixed before it is learned from, and its first dough corrects the others
 */
export async function loadWaters(
  from: Db,
  bakeryId: string,
  trialIds: readonly string[],
  day: { beganAt: Date },
): Promise<Map<string, WaterFacts>> {
  if (trialIds.length === 0) return new Map()
  const [own, tapRows, measures] = await Promise.all([
    trialsOf(from, bakeryId, trialIds),
    from.equipment.findMany({
      where: { bakeryId, kind: 'tap_water', endedAt: null },
      select: { kind: true, tempC: true, limitC: true },
    }),
    from.measure.findMany({
      where: { bakeryId, code: { in: ['flour-temp', 'room-temp', 'water-temp', 'dough-temp'] } },
      select: { id: true, code: true },
    }),
  ])
  const logged = await Promise.all(
    [...new Map(own.map((trial) => [keyOf(trial), trial])).values()].map(async (trial) => {
      const of = trial.mixerId === null ? { id: trial.id } : { mixerId: trial.mixerId }
      return [keyOf(trial), await loggedDoughs(from, bakeryId, of, measures)] as const
    }),
  )
  const known = new Set(own.map(({ id }) => id))
  const others = new Set(
    logged.flatMap(([, doughs]) => doughs.map(({ trialId }) => trialId)).filter((id) => !known.has(id)),
  )
  const trials = [...own, ...(others.size > 0 ? await trialsOf(from, bakeryId, [...others]) : [])]
  const heats = new Map(trials.map((trial) => [trial.id, heatOfTrial(trial)]))
  const tapTempC = watersOf(tapRows).tap?.tempC ?? null
  const mixed = new Map(
    logged.map(([key, doughs]) => [
      key,
      doughs.flatMap(({ trialId, ...dough }) => {
        const of = heats.get(trialId)
        if (of?.outcome !== 'known') return []
        const { doughG, mixMin } = of
        const { id, code, begunAtMs, temps } = dough
        return [{ id, code, begunAtMs, doughG, mixMin, jPerKgMin: frictionOfDough(of, temps) }]
      }),
    ]),
  )
  return new Map(
    own.map((trial) => {
      const heat = heats.get(trial.id) ?? { outcome: 'no-plain-water' }
      return [
        trial.id,
        factsOf(trial, heat, mixed.get(keyOf(trial)) ?? [], { tapTempC, beganAtMs: day.beganAt.getTime() }),
      ]
    }),
  )
}

/** What the doughs of a trial's mixer say of its water: those of earlier days teach, and the first of today corrects. */
function factsOf(
  trial: TrialRow,
  heat: HeatOfTrial,
  doughs: readonly Mixed[],
  { tapTempC, beganAtMs }: { tapTempC: number | null; beganAtMs: number },
): WaterFacts {
  if (heat.outcome !== 'known') return heat
  const earlier = doughs.filter((dough) => dough.begunAtMs < beganAtMs)
  const today = doughs.filter((dough) => dough.begunAtMs >= beganAtMs)
  return {
    outcome: 'known',
    targetC: trial.controlVersion.doughTempC,
    tapTempC: trial.tapTempC ?? tapTempC,
    mixMin: heat.mixMin,
    heat: heat.heat,
    isGuess: heat.isGuess,
    mixer: { key: keyOf(trial), name: trial.mixer?.name ?? null },
    friction: learned(earlier, heat) ?? heat.friction,
    first: firstOfDay(today.map(({ id, code, begunAtMs, jPerKgMin }) => ({ id, code, begunAtMs, jPerKgMin }))),
  }
}

function keyOf({ id, mixerId }: { id: string; mixerId: string | null }): string {
  return mixerId ?? id
}

function trialsOf(from: Db, bakeryId: string, ids: readonly string[]): Promise<TrialRow[]> {
  return from.trial.findMany({ where: { bakeryId, id: { in: [...ids] } }, select: trialColumns })
}

type Measured = { id: string; code: string | null }

/** The latest doughs of a mixer, or of a trial, on which a dough temperature was read, with what stands of the four. */
async function loggedDoughs(from: Db, bakeryId: string, trial: Prisma.TrialWhereInput, measures: readonly Measured[]) {
  const doughTemp = measures.find(({ code }) => code === 'dough-temp')
  if (!doughTemp) return []
  const rows = await from.batch.findMany({
    where: {
      bakeryId,
      trial,
      state: { in: teaching },
      begunAt: { not: null },
      readings: { some: { measureId: doughTemp.id } },
    },
    select: {
      id: true,
      code: true,
      trialId: true,
      begunAt: true,
      readings: {
        where: { measureId: { in: measures.map(({ id }) => id) } },
        select: { id: true, measureId: true, value: true, receivedAt: true, supersedesId: true },
      },
    },
    orderBy: [{ begunAt: 'desc' }, { id: 'asc' }],
    take: learnedFrom.most,
  })
  return rows.flatMap(({ id, code, trialId, begunAt, readings }) => {
    const current = currentReadings(readings)
    const valueOf = (wanted: string) =>
      current.find(({ measureId }) => measures.find((each) => each.id === measureId)?.code === wanted)?.value ?? null
    return begunAt ? [{ id, code, trialId, begunAtMs: begunAt.getTime(), temps: tempsOf(valueOf) }] : []
  })
}

type HeatOfTrial =
  | { outcome: 'no-plain-water' | 'waters-differ' | 'friction-too-high' }
  | {
      outcome: 'known'
      heat: DoughHeat
      doughG: number
      mixMin: number
      isGuess: boolean
      /** As long as nothing is learned. */
      friction: WaterFriction
    }

function heatOfTrial(trial: TrialRow): HeatOfTrial {
  const { controlVersion, mixer, flourTempC: flourC, roomTempC: roomC } = trial
  const mixMin = controlVersion.mixTimeS / 60
  const cPerMin = mixer?.frictionCPerMin ?? null
  const riseC = (cPerMin ?? guessedFrictionCPerMin) * mixMin
  if (riseC > mostRiseC) return { outcome: 'friction-too-high' }
  const heats = trial.arms.map(({ lines }) => heatOfLines(lines, trial))
  const [control] = heats
  if (!control || !(mixMin > 0)) return { outcome: 'no-plain-water' }
  const targetC = controlVersion.doughTempC
  const { frictionJ: jPerKg } = requiredWaterTemp({
    doughTempC: targetC,
    parts: partsOf(control.heat, flourC, roomC),
    bowl: null,
    waterMassG: waterOf(control.heat),
    friction: { by: 'rise', riseC },
    roomHeatJ: 0,
  })
  const waters = heats.map(
    (each) => each && waterFor({ heat: each.heat, targetC }, { flourC, roomC, jPerKg }).waterTempC,
  )
  const temps = waters.filter((each) => each !== null)
  if (temps.length < waters.length || Math.max(...temps) - Math.min(...temps) > mostApartC)
    return { outcome: 'waters-differ' }
  return {
    outcome: 'known',
    ...control,
    mixMin,
    friction: { jPerKg, by: cPerMin === null ? 'usual' : 'mixer', doughs: 0, isGuess: cPerMin === null },
  }
}

type Mixed = {
  id: string
  code: string
  begunAtMs: number
  doughG: number
  mixMin: number
  jPerKgMin: number | null
}

/** What doughs that were mixed teach; null of too few. */
function learned(
  doughs: readonly Mixed[],
  { doughG, mixMin }: { doughG: number; mixMin: number },
): WaterFriction | null {
  const batches = doughs.flatMap((dough) =>
    dough.jPerKgMin === null
      ? []
      : [
          {
            batch: dough.id,
            doughMassG: dough.doughG,
            frictionJ: (dough.jPerKgMin * dough.mixMin * dough.doughG) / 1000,
            firstSpeedMin: dough.mixMin,
            secondSpeedMin: 0,
          },
        ],
  )
  if (batches.length < learnedFrom.least) return null
  const { frictionJPerKg, isGuess } = learnFriction({
    batches,
    plannedDoughMassG: doughG,
    plannedFirstSpeedMin: mixMin,
    plannedSecondSpeedMin: 0,
  })
  return { jPerKg: frictionJPerKg, by: 'learned', doughs: batches.length, isGuess }
}
