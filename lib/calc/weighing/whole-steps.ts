/** A reading within this part of a step of a mark is on the mark: 0.3 / 0.1 is not quite 3 in binary. */
const ON_MARK = 1e-9

/** Largest whole number of steps not above the mass; `restSteps` is what is left, 0 ≤ rest < 1. */
export function wholeSteps(massG: number, resolutionG: number): { steps: number; restSteps: number } {
  const exact = massG / resolutionG
  const nearest = Math.round(exact)
  if (Math.abs(exact - nearest) <= ON_MARK * Math.max(1, Math.abs(exact))) return { steps: nearest, restSteps: 0 }
  const steps = Math.floor(exact)
  return { steps, restSteps: exact - steps }
}

/** Steps back to g, free of binary dust: 3 steps of 0.1 are 0.3. */
export function stepsToG(steps: number, resolutionG: number): number {
  return Number((steps * resolutionG).toPrecision(14))
}
