import { mustBeWithin, mustHaveAtLeast } from '../checks'
import { CalcError } from '../error'
import { huberFit, type HuberFit } from '../fitting/huber-fit'

export type MixedBatch = {
  batch: string
  doughMassG: number
  /** From frictionOfBatch; a bad reading may make it negative. */
  frictionJ: number
  firstSpeedMin: number
  secondSpeedMin: number
}

export type LearnedFriction = {
  /** Heat that a kg of dough takes up in a minute; null for a speed that no batch had. */
  firstSpeedJPerKgMin: number | null
  secondSpeedJPerKgMin: number | null
  /** For the dough that is planned. */
  frictionJPerKg: number
  batches: number
  /** Robust spread of the batches about what was learned. */
  spreadJPerKg: number
  /** Batches that lie so far off the others that they count for less than half. */
  setAside: { batch: string; weightShare: number; offByJPerKg: number }[]
  leastDoughMassG: number
  mostDoughMassG: number
  isGuess: boolean
  reasons: (
    | 'few-batches'
    | 'outside-dough-sizes'
    | 'longer-than-learned'
    | 'speeds-not-told-apart'
    | 'takes-heat-out'
  )[]
}

const FEW = 4
const MINUTES = { min: 0, max: 1000 }
/** Squared cosine between the minutes of both speeds above which batches do not tell the speeds apart. */
const ALIKE = 0.99

/**
 * Friction of a mixer, per kg of dough and minute at each speed, learned from batches that it mixed, so that a bad
 * reading moves it little (huberFit through no friction at no minutes). It is a guess, with the reasons, outside what the
 * batches had; those set aside do not widen that.
 * @param batches of one mixer, at least two, at most 10,000; doughMassG > 0; minutes 0 to 1000, together > 0 in each
 * @param plannedDoughMassG > 0; plannedFirstSpeedMin, plannedSecondSpeedMin 0 to 1000, together > 0
 * @returns where the batches do not tell the speeds apart, one figure for both
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range' | 'duplicate'; 'not-possible' with reason 'speed-never-mixed'
 * Source: heat balance; P. J. Huber (1981), Robust statistics, chapter 7.
 */
export function learnFriction(q: {
  batches: readonly MixedBatch[]
  plannedDoughMassG: number
  plannedFirstSpeedMin: number
  plannedSecondSpeedMin: number
}): LearnedFriction {
  mustBeWithin('plannedDoughMassG', q.plannedDoughMassG, { over: 0 })
  const planned = [
    mustBeWithin('plannedFirstSpeedMin', q.plannedFirstSpeedMin, MINUTES),
    mustBeWithin('plannedSecondSpeedMin', q.plannedSecondSpeedMin, MINUTES),
  ]
  mustBeWithin('plannedFirstSpeedMin', planned[0]! + planned[1]!, { over: 0 })
  const minutes = minutesOf(q.batches)
  const isMixed = [0, 1].map((speed) => minutes.some((row) => row[speed]! > 0))
  planned.forEach((value, speed) => {
    if (value > 0 && !isMixed[speed]) {
      const field = speed === 0 ? 'plannedFirstSpeedMin' : 'plannedSecondSpeedMin'
      throw new CalcError('not-possible', { field, value, reason: 'speed-never-mixed' })
    }
  })
  const areApart = isMixed[0]! && isMixed[1]! && q.batches.length >= FEW && cosineSquared(minutes) <= ALIKE
  const y = q.batches.map(({ frictionJ, doughMassG }) => frictionJ / (doughMassG / 1000))
  const fit = huberFit({ x: areApart ? minutes : minutes.map(([a, b]) => [a! + b!]), y })
  const perMin = isMixed.map((is, speed) => (is ? fit.coefficients[areApart ? speed : 0]! : null))
  const frictionJPerKg = planned.reduce((sum, value, speed) => sum + value * (perMin[speed] ?? 0), 0)
  const used = q.batches.filter((_, i) => fit.weights[i]! >= 0.5)
  const masses = used.map(({ doughMassG }) => doughMassG)
  const [leastDoughMassG, mostDoughMassG] = [Math.min(...masses), Math.max(...masses)]
  const reasons: LearnedFriction['reasons'] = []
  if (used.length < FEW) reasons.push('few-batches')
  if (q.plannedDoughMassG < leastDoughMassG || q.plannedDoughMassG > mostDoughMassG) reasons.push('outside-dough-sizes')
  const longest = [0, 1].map((speed) =>
    Math.max(...used.map((one) => (speed === 0 ? one.firstSpeedMin : one.secondSpeedMin))),
  )
  if (planned.some((value, speed) => value > longest[speed]!)) reasons.push('longer-than-learned')
  if (isMixed[0]! && isMixed[1]! && !areApart) reasons.push('speeds-not-told-apart')
  if (perMin.some((value) => value !== null && value < 0)) reasons.push('takes-heat-out')
  return {
    firstSpeedJPerKgMin: perMin[0]!,
    secondSpeedJPerKgMin: perMin[1]!,
    frictionJPerKg,
    batches: q.batches.length,
    spreadJPerKg: fit.spread,
    setAside: setAside(q.batches, fit),
    leastDoughMassG,
    mostDoughMassG,
    isGuess: reasons.length > 0,
    reasons,
  }
}

function minutesOf(batches: readonly MixedBatch[]): number[][] {
  mustHaveAtLeast('batches', batches, 2)
  mustBeWithin('batches.length', batches.length, { max: 10_000 })
  const names = new Set<string>()
  return batches.map((one, i) => {
    if (names.has(one.batch)) throw new CalcError('duplicate', { field: `batches[${i}].batch`, value: one.batch })
    names.add(one.batch)
    mustBeWithin(`batches[${i}].doughMassG`, one.doughMassG, { over: 0 })
    mustBeWithin(`batches[${i}].frictionJ`, one.frictionJ)
    const first = mustBeWithin(`batches[${i}].firstSpeedMin`, one.firstSpeedMin, MINUTES)
    const second = mustBeWithin(`batches[${i}].secondSpeedMin`, one.secondSpeedMin, MINUTES)
    mustBeWithin(`batches[${i}].firstSpeedMin`, first + second, { over: 0 })
    return [first, second]
  })
}

function cosineSquared(minutes: readonly (readonly number[])[]): number {
  const sum = (f: (row: readonly number[]) => number) => minutes.reduce((total, row) => total + f(row), 0)
  return sum(([a, b]) => a! * b!) ** 2 / (sum(([a]) => a! * a!) * sum(([, b]) => b! * b!))
}

function setAside(batches: readonly MixedBatch[], fit: HuberFit): LearnedFriction['setAside'] {
  return batches.flatMap(({ batch }, i) =>
    fit.weights[i]! < 0.5 ? [{ batch, weightShare: fit.weights[i]!, offByJPerKg: fit.residuals[i]! }] : [],
  )
}
