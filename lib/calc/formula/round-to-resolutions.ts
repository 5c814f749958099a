import { mustBeWithin, mustHaveAtLeast } from '../checks'
import { stepsToG, wholeSteps } from '../weighing/whole-steps'

export type RoundedLine = {
  id: string
  exactG: number
  massG: number
  /** (rounded − exact) / exact; 0 for a line of nothing. */
  relativeError: number
}

export type RoundedLines = {
  lines: RoundedLine[]
  /** Sum of rounded less sum of exact, g; at most half of the coarsest resolution. */
  driftG: number
  warnings: { code: 'rounded-to-zero'; lineId: string }[]
}

/**
 * Rounds each line to its own scale so that the total does not drift: every line goes to the mark below or above
 * it, and the marks above are given out by largest remainder. Scales are gone through from coarse to fine, and
 * each takes up what the coarser ones left over, as far as one step a line allows.
 * @param lines mass, g, ≥ 0; resolutionG of the line's scale, g, > 0
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range'
 * Source: largest remainder method (Hamilton); with several resolutions our own extension of it.
 * @example 33.3, 33.3, 33.4 on a 1 g scale: 33, 33, 34
 */
export function roundToResolutions(lines: readonly { id: string; massG: number; resolutionG: number }[]): RoundedLines {
  mustHaveAtLeast('lines', lines, 1)
  const rows = lines.map((line, i) => {
    mustBeWithin(`lines[${i}].massG`, line.massG, { min: 0 })
    mustBeWithin(`lines[${i}].resolutionG`, line.resolutionG, { over: 0 })
    return { ...line, ...wholeSteps(line.massG, line.resolutionG) }
  })
  const resolutions = [...new Set(rows.map((row) => row.resolutionG))].sort((a, b) => b - a)
  let carriedG = 0
  for (const resolutionG of resolutions) {
    const group = rows.filter((row) => row.resolutionG === resolutionG)
    const restSteps = group.reduce((sum, row) => sum + row.restSteps, 0)
    const between = group.filter((row) => row.restSteps > 0).sort((a, b) => b.restSteps - a.restSteps)
    const wanted = Math.round(restSteps + carriedG / resolutionG)
    const given = Math.min(between.length, Math.max(0, wanted))
    for (const row of between.slice(0, given)) row.steps += 1
    carriedG += (restSteps - given) * resolutionG
  }
  const rounded = rows.map((row): RoundedLine => {
    const massG = stepsToG(row.steps, row.resolutionG)
    return { id: row.id, exactG: row.massG, massG, relativeError: row.massG > 0 ? (massG - row.massG) / row.massG : 0 }
  })
  return {
    lines: rounded,
    driftG: rounded.reduce((sum, line) => sum + (line.massG - line.exactG), 0),
    warnings: rounded
      .filter((line) => line.exactG > 0 && line.massG === 0)
      .map((line) => ({ code: 'rounded-to-zero', lineId: line.id })),
  }
}
