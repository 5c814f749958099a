import { z } from 'zod'
import { calcEntry } from '../entry'
import { atFlatFields } from '../flat-fields'
import { doseForTarget } from './dose-for-target'
import { fitCurve } from './fit-curve'
import { payingDose } from './paying-dose'

const n = z.number()
const interval = { se: n, df: n, low: n, high: n }
const curve = {
  model: z.enum(['linear', 'quadratic', 'saturating']),
  fixedE0: z.optional(n),
  rows: z.array(z.strictObject({ dose: n, y: n })),
  confidence: n,
}
const notClaimed = z.array(z.enum(['no-zero-dose', 'fewer-than-three-doses', 'interval-not-bounded']))

/** Invented: volume in ml of loaves with malt flour, in % on flour. */
const rows = [2450, 2470, 2530, 2545, 2600, 2585, 2660, 2650, 2690, 2700].map((y, i) => ({
  dose: [0, 0.5, 1, 2, 4][Math.floor(i / 2)]!,
  y,
}))
const example = { model: 'saturating' as const, rows, confidence: 0.95 }

export const doseResponseEntries = [
  calcEntry({
    id: 'dose-response/fit-curve',
    input: z.strictObject(curve),
    output: z.strictObject({
      method: z.enum(['least-squares']),
      model: curve.model,
      parameters: z.array(z.strictObject({ name: z.string(), estimate: n, se: n, df: n, low: n, high: z.nullable(n) })),
      residualSumSquares: n,
      residualSd: n,
      residualDf: n,
      pureErrorSumSquares: n,
      pureErrorDf: n,
      lackOfFit: z.nullable(z.strictObject({ f: n, df1: n, df2: n, p: n })),
      vertex: z.nullable(
        z.strictObject({
          kind: z.enum(['top', 'bottom']),
          dose: n,
          response: n,
          withinTested: z.boolean(),
          ...interval,
        }),
      ),
      confidence: n,
      claimed: z.boolean(),
      notClaimed,
    }),
    example,
    source:
      'Draper & Smith (1998), Applied Regression Analysis; Bates & Watts (1988), Nonlinear Regression Analysis and Its Applications',
    run: (q) => atFlatFields({ highestDose: 'rows', fit: 'rows' }, () => fitCurve(q)),
  }),
  calcEntry({
    id: 'dose-response/dose-for-target',
    input: z.strictObject({ ...curve, targetResponse: n }),
    output: z.strictObject({
      method: z.enum(['delta']),
      dose: n,
      ...interval,
      confidence: n,
      fiellerLow: z.nullable(n),
      fiellerHigh: z.nullable(n),
      claimed: z.boolean(),
      notClaimed,
    }),
    example: { ...example, targetResponse: 2600 },
    source: 'Draper & Smith (1998), Applied Regression Analysis, section 3.2; Fieller (1954), JRSS B 16',
    run: (q) => atFlatFields({ highestDose: 'rows', fit: 'rows' }, () => doseForTarget(q)),
  }),
  calcEntry({
    id: 'dose-response/paying-dose',
    input: z.strictObject({ ...curve, doseUnitPriceMinor: z.string(), gainUnitWorthMinor: z.string() }),
    output: z.strictObject({
      method: z.enum(['delta']),
      outcome: z.enum(['dose', 'nothing-pays', 'pays-as-far-as-baked', 'undecided', 'no-curve-claimed']),
      dose: z.nullable(z.strictObject({ estimate: n, ...interval })),
      neededGainPerDose: n,
      gainPerDose: z.nullable(z.strictObject({ estimate: n, ...interval })),
      confidence: n,
      notClaimed,
    }),
    example: { ...example, doseUnitPriceMinor: '1.5', gainUnitWorthMinor: '0.02' },
    source: 'Heady & Dillon (1961), Agricultural Production Functions, chapter 2',
    run: (q) => atFlatFields({ highestDose: 'rows', fit: 'rows' }, () => payingDose(q)),
  }),
] as const
