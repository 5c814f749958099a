import loadHighs from 'highs'

/** Linear programs for tests, solved by HiGHS: an outside judge of what is feasible and what is best. */
export type LinearProgram = {
  minimise: readonly number[]
  /** low ≤ Σ coefficients · x ≤ high */
  rows: readonly { coefficients: readonly number[]; low: number; high: number }[]
  lower: readonly number[]
  upper: readonly number[]
}

const number = (value: number) => (value === Infinity ? '+inf' : value === -Infinity ? '-inf' : value.toPrecision(17))
const sum = (coefficients: readonly number[]) =>
  coefficients.map((c, j) => `${c < 0 ? '-' : '+'} ${number(Math.abs(c))} x${j}`).join(' ') || '0 x0'

const highs = await loadHighs()

export function solveLinearProgram(lp: LinearProgram): { status: string; objective: number } {
  const rows = lp.rows.flatMap(({ coefficients, low, high }, i) => [
    ...(low === -Infinity ? [] : [` low${i}: ${sum(coefficients)} >= ${number(low)}`]),
    ...(high === Infinity ? [] : [` high${i}: ${sum(coefficients)} <= ${number(high)}`]),
  ])
  const bounds = lp.lower.map((low, j) => ` ${number(low)} <= x${j} <= ${number(lp.upper[j] ?? Infinity)}`)
  const text = ['Minimize', ` cost: ${sum(lp.minimise)}`, 'Subject To', ...rows, 'Bounds', ...bounds, 'End'].join('\n')
  const result = highs.solve(text, { output_flag: false })
  return { status: result.Status, objective: result.ObjectiveValue }
}
