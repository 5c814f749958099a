import { mustBeWithin, mustHaveAtLeast, mustHaveAtMost } from '../checks'
import { CalcError } from '../error'
import { compositionWarnings } from '../formula/composition-warnings'
import { roundToScaleG } from '../weighing/round-to-scale'
import { holdTotals } from './hold-totals'
import { mattersTo } from './matters-to'
import { totalShare } from './total-share'
import type { ArmLine, ArmTotal, LineMove, LineSet } from './types'

/** In the order in which they are held where not all can be: what makes the dough comes before how much there is of it. */
const ARM_TOTALS: readonly ArmTotal[] = ['flour', 'water', 'salt', 'fat', 'sugars', 'protein', 'dough-mass']

/** A total that can be met is met within this part of the control's dough. */
const HELD_SHARE_OF_DOUGH = 1e-9
/** Changes below this part of the dough are rounding of the computation. */
const ROUNDING_SHARE_OF_DOUGH = 1e-12
/** Totals smaller than this part of the dough are weighed in the fit as if they were this large. */
const LEAST_TOTAL_SHARE = 0.01
/** A list as long as this is no dough: ten times as long takes half a minute. */
const MOST_LINES = 1000
/** A line that the control does not have is given this part of the dough as the mass that changes are relative to. */
const ABSENT_LINE_SHARE = 0.001
/** How far off a held total may be, of itself, when everything is weighed. Common practice, no source. */
const USUAL_HELD_SHARE = 0.01

export type BalanceReason = {
  code: 'no-movable-line-carries-it' | 'dose-brings-more-than-can-go' | 'totals-conflict' | 'scale-too-coarse'
  total: ArmTotal
  /** What the arm brings of it before lines move, g; below zero where it takes some away. */
  broughtG: number
  /** What the lines that may move for it can give up, g. */
  removableG: number
  /** Arm less control as weighed, g. */
  offG: number
  /** The same as a part of the control's; null where the control has none. */
  offShare: number | null
}

export type BalanceWarning =
  | { code: 'line-emptied'; lineId: string }
  | { code: 'composition-above-100' | 'looks-like-share'; lineId: string }

export type BalancedArm = {
  outcome: 'on-top' | 'balanced' | 'nothing-to-balance' | 'not-balanced'
  /** The control's lines in the arm. */
  lines: {
    lineId: string
    controlG: number
    /** Not rounded. */
    armG: number
    changeG: number
    /** Rounded to the line's scale; what did not change is weighed as in the control. */
    weighedG: number
    /** The change is less than the scale shows, but leaving it out would unbalance a held total. */
    belowResolution: boolean
    atBound: 'min' | 'max' | null
    /** The arm itself says what this line weighs. */
    isSet: boolean
  }[]
  added: { lineId: string; massG: number; weighedG: number }[]
  /** Arm less control. `controlG` is null where a line of the control does not state it. */
  totals: {
    total: ArmTotal
    isHeld: boolean
    controlG: number | null
    differenceG: number | null
    /** On the control's flour. */
    differencePctFlour: number | null
    /** As weighed. */
    weighedDifferenceG: number | null
  }[]
  /** Why a held total is off by more than is allowed; empty when none is. */
  reasons: BalanceReason[]
  /** What to look at: lines that the balance emptied, compositions that cannot be right. */
  warnings: BalanceWarning[]
}

type Question = {
  control: readonly ArmLine[]
  added: readonly ArmLine[]
  set?: readonly LineSet[]
  hold: readonly ArmTotal[]
  moves: readonly LineMove[]
  how: 'balanced' | 'on-top'
  heldShare?: number
}

/**
 * Balances an arm: finds masses of the lines that may move so that the held totals of the arm equal the control's,
 * all lines together. A line moves for a total only if it matters to it (mattersTo); what it has of other totals is made
 * up for by the lines that matter to those. Totals that can be met together, in the order of ARM_TOTALS, are met to 1e-9 of the dough; one that cannot is
 * met as far as the lines that matter to it go, never at the expense of the others, and is named in `reasons` when it is
 * off by more than `heldShare` of itself once everything is weighed. Of all such arms the one with the smallest sum of
 * squared relative changes is given. Changes below a line's resolution are left out where every held total stays within
 * `heldShare`; when nothing is left there is 'nothing-to-balance'.
 * @param control lines of the control, 1 to 1000, all stages; masses g, ≥ 0, some flour; resolution 0 is not rounded
 * @param added lines that the arm has beside the control's, g, ≥ 0; may be empty where something is set
 * @param set lines of the control that the arm lowers, raises or leaves out, with their mass in the arm, g, ≥ 0; they do not move
 * @param hold totals to hold; empty is allowed with 'on-top' only
 * @param moves lines that may move, with bounds around their control mass; see usualMoves
 * @param how 'on-top' changes nothing beyond what is added and set, as a supplier's leaflet may say; differences are reported
 * @param heldShare how far off a held total may be, of itself, > 0 to 0.1; 0.01 unless said
 * @throws CalcError 'empty' | 'wrong-shape' | 'duplicate' | 'not-finite' | 'out-of-range'; 'not-possible' with reason 'unknown-line', or
 *   'line-is-set' for a line that is set and may move, or 'not-stated' when a held total is not stated by a line that is
 *   added, set or may move
 * Source: mass balance; bounded least squares and smallest change as named in those files.
 */
export function balanceArm(q: Question): BalancedArm {
  const { flourG, doughG } = mustBeArm(q)
  const heldShare = mustBeWithin('heldShare', q.heldShare ?? USUAL_HELD_SHARE, { over: 0, max: 0.1 })
  const isBalanced = q.how === 'balanced'
  const movers = isBalanced ? q.moves.map((move, i) => moverOf(q, move, i)) : []
  const sets = (q.set ?? []).map((set, i) => setOf(q, set, i))
  const hold = ARM_TOTALS.filter((total) => q.hold.includes(total)).map((total): Held => {
    const controlG = sumOf(q.control, (line) => (totalShare(line, total) ?? 0) * line.massG)
    return {
      total,
      controlG,
      broughtG: broughtG(q.added, sets, total),
      allowedG: Math.max(heldShare * controlG, HELD_SHARE_OF_DOUGH * doughG),
    }
  })

  const exact = isBalanced ? balancedChanges(movers, hold, doughG) : { changeG: new Map<string, number>(), isMet: [] }
  const changeG = withoutInvisible(movers, hold, exact.changeG, ROUNDING_SHARE_OF_DOUGH * doughG)
  const lines = q.control.map((line): BalancedArm['lines'][number] => {
    const set = sets.find((each) => each.line.id === line.id)
    const mover = movers.find((one) => one.line.id === line.id)
    const change = set ? set.massG - line.massG : (changeG.get(line.id) ?? 0)
    const armG = set ? set.massG : Math.max(mover?.minG ?? 0, line.massG + change)
    return {
      lineId: line.id,
      controlG: line.massG,
      armG,
      changeG: change,
      weighedG: weighed(armG, line.resolutionG),
      belowResolution: set === undefined && change !== 0 && Math.abs(change) < line.resolutionG,
      atBound:
        mover === undefined || change === 0 ? null : armG <= mover.minG ? 'min' : armG >= mover.maxG ? 'max' : null,
      isSet: set !== undefined,
    }
  })
  const added = q.added.map((line) => ({
    lineId: line.id,
    massG: line.massG,
    weighedG: weighed(line.massG, line.resolutionG),
  }))
  const totals = ARM_TOTALS.map((total) => totalOf(q, total, lines, added, flourG))
  const reasons = isBalanced ? hold.flatMap((held, k) => reasonFor(held, movers, exact.isMet[k] ?? false, totals)) : []
  const hasMoved = lines.some((line) => line.changeG !== 0 && !line.isSet)
  return {
    outcome: !isBalanced
      ? 'on-top'
      : reasons.length > 0
        ? 'not-balanced'
        : hasMoved
          ? 'balanced'
          : 'nothing-to-balance',
    lines,
    added,
    totals,
    reasons,
    warnings: [
      ...lines
        .filter((line) => !line.isSet && line.controlG > 0 && line.weighedG === 0)
        .map((line) => ({ code: 'line-emptied' as const, lineId: line.lineId })),
      ...compositionFaults([...q.control, ...q.added]),
    ],
  }
}

type Mover = { line: ArmLine; minG: number; maxG: number; field: string }
type SetLine = { line: ArmLine; massG: number; field: string }
type Held = { total: ArmTotal; controlG: number; broughtG: number; allowedG: number }

function mustBeArm(q: Question): { flourG: number; doughG: number } {
  mustHaveAtLeast('control', q.control, 1)
  mustHaveAtMost('control', q.control, MOST_LINES)
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
  mustBeOnce('moves', q.moves)
  mustBeOnce('set', q.set ?? [])
  return { flourG: mustBeWithin('flourG', flourG, { over: 0 }), doughG }
}

function mustBeOnce(field: 'moves' | 'set', list: readonly { lineId: string }[]): void {
  list.forEach(({ lineId }, i) => {
    if (list.findIndex((other) => other.lineId === lineId) < i)
      throw new CalcError('duplicate', { field: `${field}[${i}].lineId`, value: lineId })
  })
}

function moverOf(q: Question, move: LineMove, i: number): Mover {
  const { at, line } = lineOrRefuse(q, `moves[${i}].lineId`, move.lineId)
  if (q.set?.some(({ lineId }) => lineId === move.lineId)) {
    throw new CalcError('not-possible', { field: `moves[${i}].lineId`, value: move.lineId, reason: 'line-is-set' })
  }
  const minG = mustBeWithin(`moves[${i}].minG`, move.minG, { min: 0, max: line.massG })
  const maxG = move.maxG === null ? Infinity : mustBeWithin(`moves[${i}].maxG`, move.maxG, { min: line.massG })
  return { line, minG, maxG, field: `control[${at}].composition` }
}

function setOf(q: Question, set: LineSet, i: number): SetLine {
  const { at, line } = lineOrRefuse(q, `set[${i}].lineId`, set.lineId)
  return { line, massG: mustBeWithin(`set[${i}].massG`, set.massG, { min: 0 }), field: `control[${at}].composition` }
}

function lineOrRefuse(q: Question, field: string, id: string): { at: number; line: ArmLine } {
  const at = q.control.findIndex((line) => line.id === id)
  const line = q.control[at]
  if (line === undefined) throw new CalcError('not-possible', { field, value: id, reason: 'unknown-line' })
  return { at, line }
}

function mustBeStated(line: ArmLine, total: ArmTotal, field: string): number {
  const share = totalShare(line, total)
  if (share === null) throw new CalcError('not-possible', { field, value: total, reason: 'not-stated' })
  return share
}

function broughtG(added: readonly ArmLine[], sets: readonly SetLine[], total: ArmTotal): number {
  const dosed = added.reduce(
    (sum, line, i) => sum + mustBeStated(line, total, `added[${i}].composition`) * line.massG,
    0,
  )
  return sets.reduce(
    (sum, { line, massG, field }) => sum + mustBeStated(line, total, field) * (massG - line.massG),
    dosed,
  )
}

function balancedChanges(
  movers: readonly Mover[],
  hold: readonly Held[],
  doughG: number,
): { changeG: Map<string, number>; isMet: boolean[] } {
  const { changeG, isMet } = holdTotals({
    shares: hold.map(({ total }) => movers.map((mover) => mustBeStated(mover.line, total, mover.field))),
    matters: hold.map(({ total, controlG }) => movers.map(({ line }) => mattersTo(line, total, controlG))),
    broughtG: hold.map((held) => held.broughtG),
    totalScaleG: hold.map(({ controlG }) => Math.max(controlG, LEAST_TOTAL_SHARE * doughG)),
    lowerG: movers.map(({ line, minG }) => minG - line.massG),
    upperG: movers.map(({ line, maxG }) => maxG - line.massG),
    lineScaleG: movers.map(({ line }) => (line.massG > 0 ? line.massG : ABSENT_LINE_SHARE * doughG)),
    toleranceG: HELD_SHARE_OF_DOUGH * doughG,
  })
  return { changeG: new Map(movers.map(({ line }, j) => [line.id, changeG[j] ?? 0])), isMet }
}

/** Leaves out changes that the scale cannot show, smallest first, as long as each held total stays within what is allowed. */
function withoutInvisible(
  movers: readonly Mover[],
  hold: readonly Held[],
  exact: ReadonlyMap<string, number>,
  roundingG: number,
): Map<string, number> {
  const kept = new Map(exact)
  const sizeOf = ({ line }: Mover) => Math.abs(exact.get(line.id) ?? 0)
  const offG = ({ total, broughtG: brought }: Held) =>
    movers.reduce((sum, { line }) => sum + (totalShare(line, total) ?? 0) * (kept.get(line.id) ?? 0), brought)
  const small = movers
    .filter((mover) => sizeOf(mover) < Math.max(mover.line.resolutionG, roundingG))
    .sort((a, b) => sizeOf(a) - sizeOf(b))
  for (const { line } of small) {
    const changed = kept.get(line.id) ?? 0
    const before = hold.map(offG)
    kept.set(line.id, 0)
    const isUnbalanced = hold.some((held, k) => {
      const was = Math.abs(before[k] ?? 0)
      const isWorse = was <= held.allowedG || mattersTo(line, held.total, held.controlG)
      return isWorse && Math.abs(offG(held)) > Math.max(held.allowedG, was)
    })
    if (isUnbalanced) kept.set(line.id, changed)
  }
  return kept
}

function totalOf(
  q: Question,
  total: ArmTotal,
  lines: BalancedArm['lines'],
  added: BalancedArm['added'],
  flourG: number,
): BalancedArm['totals'][number] {
  const shareOf = (line: ArmLine) => totalShare(line, total)
  const known = (parts: { share: number | null; massG: number }[]) =>
    parts.reduce<number | null>(
      (sum, { share, massG }) => (massG === 0 ? sum : share === null || sum === null ? null : sum + share * massG),
      0,
    )
  const difference = (
    change: (line: BalancedArm['lines'][number], of: ArmLine) => number,
    dose: (line: BalancedArm['added'][number]) => number,
  ) =>
    known([
      ...q.control.map((line, i) => ({ share: shareOf(line), massG: change(lines[i]!, line) })),
      ...q.added.map((line, i) => ({ share: shareOf(line), massG: dose(added[i]!) })),
    ])
  const differenceG = difference(
    (line) => line.changeG,
    (dose) => dose.massG,
  )
  return {
    total,
    isHeld: q.hold.includes(total),
    controlG: q.control.reduce<number | null>(
      (sum, line) => (sum === null || shareOf(line) === null ? null : sum + (shareOf(line) ?? 0) * line.massG),
      0,
    ),
    differenceG,
    differencePctFlour: differenceG === null ? null : (100 * differenceG) / flourG,
    weighedDifferenceG: difference(
      (line, of) => (line.changeG === 0 ? 0 : line.weighedG - weighed(of.massG, of.resolutionG)),
      (dose) => dose.weighedG,
    ),
  }
}

function reasonFor(
  held: Held,
  movers: readonly Mover[],
  isMet: boolean,
  totals: BalancedArm['totals'],
): BalanceReason[] {
  const { total, controlG, allowedG } = held
  const offG = totals.find((each) => each.total === total)?.weighedDifferenceG ?? 0
  if (Math.abs(offG) <= allowedG) return []
  const carriers = movers.filter(({ line }) => mattersTo(line, total, controlG))
  const removableG = sumOf(carriers, ({ line, minG }) => (totalShare(line, total) ?? 0) * (line.massG - minG))
  const code = isMet
    ? 'scale-too-coarse'
    : carriers.length === 0
      ? 'no-movable-line-carries-it'
      : held.broughtG > removableG
        ? 'dose-brings-more-than-can-go'
        : 'totals-conflict'
  return [{ code, total, broughtG: held.broughtG, removableG, offG, offShare: controlG > 0 ? offG / controlG : null }]
}

/** What a line's composition cannot be: refused by nobody, because tables have odd rows, but said. */
function compositionFaults(lines: readonly ArmLine[]): BalanceWarning[] {
  return lines.flatMap((line) =>
    line.composition === null
      ? []
      : compositionWarnings('composition', line.composition).flatMap(({ code, value }): BalanceWarning[] => {
          if (code === 'looks-like-share') return [{ code, lineId: line.id }]
          return code === 'not-closed' && (value ?? 0) > 100 ? [{ code: 'composition-above-100', lineId: line.id }] : []
        }),
  )
}

const weighed = (massG: number, resolutionG: number) =>
  resolutionG === 0 ? massG : roundToScaleG({ massG, resolutionG })

function sumOf<T>(list: readonly T[], value: (each: T) => number): number {
  return list.reduce((sum, each) => sum + value(each), 0)
}
