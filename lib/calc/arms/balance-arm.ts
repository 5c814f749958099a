import { mustBeWithin, mustHaveAtLeast } from '../checks'
import { CalcError } from '../error'
import { compositionWarnings } from '../formula/composition-warnings'
import { boundedLeastSquares, residualOf, type BoundedProblem } from './bounded-least-squares'
import { smallestChange } from './smallest-change'
import { totalShare } from './total-share'
import type { ArmLine, ArmTotal, LineMove, LineSet } from './types'

export const ARM_TOTALS: readonly ArmTotal[] = ['dough-mass', 'flour', 'water', 'fat', 'sugars', 'protein', 'salt']

/** A total counts as held when it is within this part of the control's dough. */
const HELD_SHARE_OF_DOUGH = 1e-9
/** Changes below this part of the dough are rounding of the computation. */
const ROUNDING_SHARE_OF_DOUGH = 1e-12
/** Totals smaller than this part of the dough are weighed in the fit as if they were this large. */
const LEAST_TOTAL_SHARE = 0.01
/** A line that the control does not have is given this part of the dough as the mass that changes are relative to. */
const ABSENT_LINE_SHARE = 0.001

export type BalanceReason = {
  code: 'no-movable-line-carries-it' | 'dose-brings-more-than-can-go' | 'totals-conflict'
  total: ArmTotal
  /** What the added ingredients bring of it, g. */
  broughtG: number
  /** What the lines that may move can give up of it, g. */
  removableG: number
}

export type BalancedArm = {
  outcome: 'on-top' | 'balanced' | 'nothing-to-balance' | 'not-balanced'
  /** The control's lines in the arm; masses not rounded. */
  lines: {
    lineId: string
    controlG: number
    armG: number
    changeG: number
    /** The change is less than the scale shows, but leaving it out would unbalance a held total. */
    belowResolution: boolean
    atBound: 'min' | 'max' | null
    /** The arm itself says what this line weighs. */
    isSet: boolean
  }[]
  added: { lineId: string; massG: number }[]
  /** Arm less control. `controlG` is null where a line of the control does not state it. */
  totals: {
    total: ArmTotal
    isHeld: boolean
    controlG: number | null
    differenceG: number | null
    /** On the control's flour. */
    differencePctFlour: number | null
  }[]
  /** Why a held total is not met; empty when all are. */
  reasons: BalanceReason[]
}

/**
 * Balances an arm: finds masses of the lines that may move so that the held totals of the arm equal the control's,
 * all lines together. If that can be, totals are held to 1e-9 of the dough and of all such arms the one with the
 * smallest sum of squared relative changes is given. If it cannot, the totals are as close as can be (least squares on
 * totals scaled by the control's own, not below 1 % of the dough), `outcome` is 'not-balanced' and `reasons` say why.
 * A total that is off by less than the finest scale among the lines that may move shows is taken as met.
 * Changes below a line's resolution are left out where the fit is as good without them; when nothing is left there is
 * 'nothing-to-balance'.
 * @param control lines of the control, all stages; masses g, ≥ 0, some flour
 * @param added the dose: lines that the arm has beside the control's, g, ≥ 0; may be empty where something is set
 * @param set lines of the control that the arm lowers, raises or leaves out, with their mass in the arm, g, ≥ 0; they do not move
 * @param hold totals to hold; empty is allowed with 'on-top' only
 * @param moves lines that may move, with bounds around their control mass; see usualMoves
 * @param how 'on-top' adds the dose and changes nothing, as a supplier's leaflet may say; differences are reported
 * @throws CalcError 'empty' | 'duplicate' | 'not-finite' | 'out-of-range'; 'not-possible' with reason 'unknown-line',
 *   'line-is-set' for a line that is set and may move, or 'not-stated' when a held total is not stated by a line that is
 *   added, set or may move
 * Source: mass balance; bounded least squares and smallest change as named in those files.
 */
export function balanceArm(q: {
  control: readonly ArmLine[]
  added: readonly ArmLine[]
  set?: readonly LineSet[]
  hold: readonly ArmTotal[]
  moves: readonly LineMove[]
  how: 'balanced' | 'on-top'
}): BalancedArm {
  const { flourG, doughG } = mustBeArm(q)
  const sets = (q.set ?? []).map((set, i) => setOf(q.control, set, i))
  const movers = q.how === 'on-top' ? [] : q.moves.map((move, i) => moverOf(q.control, sets, move, i))
  const hold = [...new Set(q.hold)]
  const heldToG = HELD_SHARE_OF_DOUGH * doughG

  const solve = (active: readonly Mover[]): Solution => {
    const rows = hold.map((total) => {
      const controlG = q.control.reduce((sum, line) => sum + (totalShare(line, total) ?? 0) * line.massG, 0)
      return { total, scaleG: Math.max(controlG, LEAST_TOTAL_SHARE * doughG) }
    })
    const refG = active.map((mover) => (mover.line.massG > 0 ? mover.line.massG : ABSENT_LINE_SHARE * doughG))
    const problem: BoundedProblem = {
      columns: active.map((mover, j) =>
        rows.map((row) => (mustBeStated(mover.line, row.total, mover.field) * (refG[j] ?? 0)) / row.scaleG),
      ),
      b: rows.map((row) => -broughtG(q.added, sets, row.total) / row.scaleG),
      lower: active.map((mover, j) => (mover.minG - mover.line.massG) / (refG[j] ?? 1)),
      upper: active.map((mover, j) => (mover.maxG - mover.line.massG) / (refG[j] ?? 1)),
    }
    const x = active.length === 0 ? [] : smallestChange(problem, boundedLeastSquares(problem))
    const residual = residualOf(problem, x)
    return {
      changeG: new Map(active.map((mover, j) => [mover.line.id, (x[j] ?? 0) * (refG[j] ?? 0)])),
      offG: rows.map((row, k) => -(residual[k] ?? 0) * row.scaleG),
      misfit: Math.hypot(...residual),
    }
  }

  const exact = solve(movers)
  const finestG = Math.max(heldToG, movers.length === 0 ? 0 : Math.min(...movers.map((mover) => mover.line.resolutionG)))
  const reasons = q.how === 'on-top' ? [] : reasonsFor(q.added, sets, movers, hold, exact.offG, finestG)
  const kept = withoutInvisible(movers, exact, solve, ROUNDING_SHARE_OF_DOUGH * doughG)

  const changeOf = (id: string) => sets.find((set) => set.line.id === id)?.changeG ?? kept.changeG.get(id) ?? 0
  const lines = q.control.map((line): BalancedArm['lines'][number] => {
    const changeG = changeOf(line.id)
    const mover = movers.find((one) => one.line.id === line.id)
    const set = sets.find((one) => one.line.id === line.id)
    const armG = set?.massG ?? Math.max(mover?.minG ?? 0, line.massG + changeG)
    return {
      lineId: line.id,
      controlG: line.massG,
      armG,
      changeG,
      belowResolution: !set && changeG !== 0 && Math.abs(changeG) < line.resolutionG,
      atBound: mover === undefined || changeG === 0 ? null : armG <= mover.minG ? 'min' : armG >= mover.maxG ? 'max' : null,
      isSet: set !== undefined,
    }
  })
  const isChanged = lines.some((line) => !line.isSet && line.changeG !== 0)
  return {
    outcome: q.how === 'on-top' ? 'on-top' : reasons.length > 0 ? 'not-balanced' : isChanged ? 'balanced' : 'nothing-to-balance',
    lines,
    added: q.added.map((line) => ({ lineId: line.id, massG: line.massG })),
    totals: ARM_TOTALS.map((total) => totalOf(q, total, hold.includes(total), changeOf, flourG)),
    reasons,
  }
}

type Mover = { line: ArmLine; minG: number; maxG: number; field: string }
type SetLine = { line: ArmLine; massG: number; changeG: number; field: string }
type Solution = { changeG: Map<string, number>; offG: number[]; misfit: number }

function mustBeArm(q: Parameters<typeof balanceArm>[0]): { flourG: number; doughG: number } {
  mustHaveAtLeast('control', q.control, 1)
  if ((q.set ?? []).length === 0) mustHaveAtLeast('added', q.added, 1)
  if (q.how === 'balanced') mustHaveAtLeast('hold', q.hold, 1)
  const ids = new Set<string>()
  let flourG = 0
  let doughG = 0
  for (const list of ['control', 'added'] as const) {
    q[list].forEach((line, i) => {
      if (ids.has(line.id)) throw new CalcError('duplicate', { field: `${list}[${i}].id`, value: line.id })
      ids.add(line.id)
      mustBeWithin(`${list}[${i}].massG`, line.massG, { min: 0 })
      mustBeWithin(`${list}[${i}].resolutionG`, line.resolutionG, { min: 0 })
      if (line.composition !== null) compositionWarnings(`${list}[${i}].composition`, line.composition)
      if (list === 'control') {
        doughG += line.massG
        if (line.isFlour) flourG += line.massG
      }
    })
  }
  const moved = new Set<string>()
  const set = new Set<string>()
  ;(q.set ?? []).forEach(({ lineId }, i) => {
    if (set.has(lineId)) throw new CalcError('duplicate', { field: `set[${i}].lineId`, value: lineId })
    set.add(lineId)
  })
  q.moves.forEach((move, i) => {
    if (moved.has(move.lineId)) throw new CalcError('duplicate', { field: `moves[${i}].lineId`, value: move.lineId })
    moved.add(move.lineId)
  })
  return { flourG: mustBeWithin('flourG', flourG, { over: 0 }), doughG }
}

function setOf(control: readonly ArmLine[], set: LineSet, i: number): SetLine {
  const at = control.findIndex((line) => line.id === set.lineId)
  const line = control[at]
  if (line === undefined) throw new CalcError('not-possible', { field: `set[${i}].lineId`, value: set.lineId, reason: 'unknown-line' })
  const massG = mustBeWithin(`set[${i}].massG`, set.massG, { min: 0 })
  return { line, massG, changeG: massG - line.massG, field: `control[${at}].composition` }
}

function moverOf(control: readonly ArmLine[], sets: readonly SetLine[], move: LineMove, i: number): Mover {
  const at = control.findIndex((line) => line.id === move.lineId)
  const line = control[at]
  if (line === undefined) {
    throw new CalcError('not-possible', { field: `moves[${i}].lineId`, value: move.lineId, reason: 'unknown-line' })
  }
  if (sets.some((set) => set.line.id === line.id)) {
    throw new CalcError('not-possible', { field: `moves[${i}].lineId`, value: move.lineId, reason: 'line-is-set' })
  }
  const minG = mustBeWithin(`moves[${i}].minG`, move.minG, { min: 0, max: line.massG })
  const maxG = move.maxG === null ? Infinity : mustBeWithin(`moves[${i}].maxG`, move.maxG, { min: line.massG })
  return { line, minG, maxG, field: `control[${at}].composition` }
}

function mustBeStated(line: ArmLine, total: ArmTotal, field: string): number {
  const share = totalShare(line, total)
  if (share === null) throw new CalcError('not-possible', { field, value: total, reason: 'not-stated' })
  return share
}

function broughtG(added: readonly ArmLine[], sets: readonly SetLine[], total: ArmTotal): number {
  const ofSets = sets.reduce((sum, { line, changeG, field }) => sum + mustBeStated(line, total, field) * changeG, 0)
  return added.reduce((sum, line, i) => sum + mustBeStated(line, total, `added[${i}].composition`) * line.massG, ofSets)
}

function reasonsFor(
  added: readonly ArmLine[],
  sets: readonly SetLine[],
  movers: readonly Mover[],
  hold: readonly ArmTotal[],
  offG: readonly number[],
  toleranceG: number,
): BalanceReason[] {
  return hold.flatMap((total, k): BalanceReason[] => {
    const off = offG[k] ?? 0
    if (Math.abs(off) <= toleranceG) return []
    const carriers = movers.filter((mover) => (totalShare(mover.line, total) ?? 0) > 0)
    const removableG = carriers.reduce((sum, m) => sum + (totalShare(m.line, total) ?? 0) * (m.line.massG - m.minG), 0)
    const brought = broughtG(added, sets, total)
    const code =
      carriers.length === 0
        ? 'no-movable-line-carries-it'
        : brought > removableG
          ? 'dose-brings-more-than-can-go'
          : 'totals-conflict'
    return [{ code, total, broughtG: brought, removableG }]
  })
}

/** Leaves out changes that the scale cannot show, smallest first, as long as the fit is as good without them. */
function withoutInvisible(
  movers: readonly Mover[],
  exact: Solution,
  solve: (active: readonly Mover[]) => Solution,
  roundingG: number,
): Solution {
  const isInvisible = (solution: Solution, mover: Mover) =>
    Math.abs(solution.changeG.get(mover.line.id) ?? 0) < Math.max(mover.line.resolutionG, roundingG)
  if (movers.every((mover) => isInvisible(exact, mover))) return { ...exact, changeG: new Map() }
  const isAsGood = (solution: Solution) => solution.misfit <= exact.misfit + HELD_SHARE_OF_DOUGH / 100
  const visible = movers.filter((mover) => !isInvisible(exact, mover))
  if (visible.length === movers.length) return exact
  const allOut = solve(visible)
  if (isAsGood(allOut) && visible.every((mover) => !isInvisible(allOut, mover))) return allOut
  let kept = exact
  let active = movers
  const needed = new Set<string>()
  for (;;) {
    const smallest = active
      .filter((mover) => !needed.has(mover.line.id) && isInvisible(kept, mover))
      .sort((a, b) => Math.abs(kept.changeG.get(a.line.id) ?? 0) - Math.abs(kept.changeG.get(b.line.id) ?? 0))[0]
    if (smallest === undefined) return kept
    const fewer = active.filter((mover) => mover !== smallest)
    const without = solve(fewer)
    if (isAsGood(without)) {
      active = fewer
      kept = without
    } else {
      needed.add(smallest.line.id)
    }
  }
}

function totalOf(
  q: { control: readonly ArmLine[]; added: readonly ArmLine[] },
  total: ArmTotal,
  isHeld: boolean,
  changeOf: (id: string) => number,
  flourG: number,
): BalancedArm['totals'][number] {
  let controlG: number | null = 0
  let differenceG: number | null = 0
  for (const line of q.control) {
    const share = totalShare(line, total)
    controlG = share === null || controlG === null ? null : controlG + share * line.massG
    const changeG = changeOf(line.id)
    if (changeG !== 0) differenceG = share === null || differenceG === null ? null : differenceG + share * changeG
  }
  for (const line of q.added) {
    const share = totalShare(line, total)
    differenceG = share === null || differenceG === null ? null : differenceG + share * line.massG
  }
  return {
    total,
    isHeld,
    controlG,
    differenceG,
    differencePctFlour: differenceG === null ? null : (100 * differenceG) / flourG,
  }
}
