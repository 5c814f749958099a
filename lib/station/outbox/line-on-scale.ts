import { toleranceOfLine } from '../../kitchen/conduct/tolerance-of-line.input'
import type { Scale, Swap, WeighLine, WeighList } from '../keep/weigh-facts'

/** Sums of decimals are off by less, and no scale shows so little. */
const dust = 1e-9

/** How a line is weighed: on which scale, in which steps, and how far off it may be. */
export type OnScale = {
  /** Name of the scale; null where none is known. */
  scale: string | null
  stepG: number
  /** The target as the scale shows it. */
  shownG: number
  /** Null for what takes as much as it takes. */
  toleranceG: number | null
  /** What the scale is to show at least and at most; the same null. */
  between: { leastG: number; mostG: number } | null
  /** It is another scale than the plan's, and shows less closely than the plan asks for: how far off that allows. */
  coarserThanG: number | null
  /** The scale does not reach so far down, or does not carry it: where its range ends. */
  beyond: { isHeavy: boolean; endG: number } | null
}

/** The scale that took the place of a line's own; null where none did. */
export function swappedFor(
  line: Pick<WeighLine, 'scale'>,
  scales: readonly Scale[],
  swaps: readonly Swap[],
): Scale | null {
  const swap = swaps.find(({ from }) => from === (line.scale?.id ?? null))
  return scales.find(({ id }) => id === swap?.to) ?? null
}

/**
 * A line on the scale that it goes on: the plan's with the plan's tolerance, or one that took its place, with the
 * tolerance that the same rule gives for that one's steps.
 */
export function lineOnScale(
  line: Pick<WeighLine, 'target' | 'apartG' | 'scale'>,
  { scales }: Pick<WeighList, 'scales'>,
  swaps: readonly Swap[],
): OnScale {
  const { massG, stepG, toleranceG } = line.target
  const swapped = swappedFor(line, scales, swaps)
  if (!swapped)
    return {
      scale: line.scale?.name ?? null,
      stepG,
      shownG: massG,
      toleranceG,
      between: betweenOf(massG, toleranceG, stepG),
      coarserThanG: null,
      beyond: null,
    }
  const here =
    toleranceG === null ? null : toleranceOfLine({ targetG: massG, stepG: swapped.stepG, apartG: line.apartG })
  return {
    scale: swapped.name,
    stepG: swapped.stepG,
    shownG: inStepsG(Math.round(stepsOf(massG, swapped.stepG)), swapped.stepG),
    toleranceG: here,
    between: betweenOf(massG, here, swapped.stepG),
    coarserThanG: here !== null && toleranceG !== null && here > toleranceG + dust ? toleranceG : null,
    beyond: beyondOf(massG, swapped),
  }
}

/** What the scale may show, in its steps, none of it outside of the tolerance. */
function betweenOf(targetG: number, toleranceG: number | null, stepG: number): OnScale['between'] {
  if (toleranceG === null) return null
  return {
    leastG: inStepsG(Math.max(0, Math.ceil(stepsOf(targetG - toleranceG, stepG))), stepG),
    mostG: inStepsG(Math.floor(stepsOf(targetG + toleranceG, stepG)), stepG),
  }
}

/** Free of binary dust: 0.3 g are three steps of 0.1 g, and three of those 0.3 g. */
function stepsOf(massG: number, stepG: number): number {
  return Number((massG / stepG).toPrecision(12))
}
function inStepsG(steps: number, stepG: number): number {
  return Number((steps * stepG).toPrecision(12))
}

function beyondOf(massG: number, { leastG, mostG }: Scale): OnScale['beyond'] {
  if (massG > mostG) return { isHeavy: true, endG: mostG }
  return leastG !== null && massG > 0 && massG < leastG ? { isHeavy: false, endG: leastG } : null
}
