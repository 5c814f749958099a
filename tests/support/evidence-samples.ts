import type { DeclaredTrial, MeasuredBatch } from '@/lib/kitchen/results/trial-facts'

/** An invented trial of malt in a tin loaf: larger specific volume is better, 4 % of the control is worth having. */
export function declaredTrial(change: Partial<DeclaredTrial> = {}): DeclaredTrial {
  return {
    kind: 'gain',
    state: 'closed',
    measure: { name: 'Specific volume', unit: 'mL/g', digits: 2, direction: 'larger' },
    margin: 4,
    marginUnit: 'pct',
    confidencePct: 95,
    holdsFor: 'any_day',
    arms: [
      { position: 0, name: 'Control', plannedWaterG: 600 },
      { position: 1, name: 'Malt 0.3 %', plannedWaterG: 600 },
      { position: 2, name: 'Malt 0.6 %', plannedWaterG: 598 },
    ],
    mixingDays: 3,
    batchesPerArm: 1,
    factor: null,
    ...change,
  }
}

/** One measured batch; `values` are its loaves, or by level when `levels` are given. */
export function measuredBatch(q: {
  arm: number
  day: number
  values: readonly (number | null)[]
  levels?: readonly string[]
  change?: Partial<MeasuredBatch>
}): MeasuredBatch {
  const { arm, day, values, levels, change } = q
  return {
    id: `${day}-${arm}`,
    code: String(100 + 10 * day + arm),
    arm,
    day,
    plannedOrder: arm + 1,
    state: 'measured',
    stateWhy: null,
    begunAt: null,
    piecesMade: values.length,
    piecesGood: values.length,
    pieces: values.map((value, i) => ({
      piece: i + 1,
      level: levels?.[i] ?? null,
      value,
      loafMassG: 400,
      volumeMl: value === null ? null : 400 * value,
    })),
    conditions: { 'dough-temp': null, 'proof-time': null, 'water-added': null },
    isOutOfItsArm: false,
    isOutAsLastWeighed: false,
    ...change,
  }
}

/** Three mixing days of two loaves a dough: A makes no difference, B gives about 10 % more. */
export const maltDoughs: readonly MeasuredBatch[] = (
  [
    [
      [4.02, 3.98],
      [4.05, 4.01],
      [4.4, 4.44],
    ],
    [
      [4.1, 4.14],
      [4.08, 4.12],
      [4.52, 4.48],
    ],
    [
      [3.95, 3.91],
      [3.96, 3.98],
      [4.36, 4.3],
    ],
  ] as const
).flatMap((day, i) => day.map((values, arm) => measuredBatch({ arm, day: i + 1, values })))
