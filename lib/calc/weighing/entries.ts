import { z } from 'zod'
import { DUST_CAUTIONS } from '../dosing/dust-cautions'
import { calcEntry } from '../entry'
import { atFlatFields } from '../flat-fields'
import { leastNetMassG } from './least-net-mass'
import { netWeightUncertaintyG } from './net-weight-uncertainty'
import { planPremix } from './plan-premix'
import { relativeDoseErrorShare } from './relative-dose-error'
import { roundToScaleG } from './round-to-scale'

const scale = { resolutionG: z.number(), repeatabilityG: z.number() }

export const weighingEntries = [
  calcEntry({
    id: 'weighing/net-weight-uncertainty',
    input: z.strictObject(scale),
    output: z.strictObject({ uncertaintyG: z.number() }),
    example: { resolutionG: 1, repeatabilityG: 0.5 },
    source: 'JCGM 100:2008 (GUM), 4.3.7 and F.2.2.1',
    run: (q) => ({ uncertaintyG: netWeightUncertaintyG(q) }),
  }),
  calcEntry({
    id: 'weighing/least-net-mass',
    input: z.strictObject({ errorShare: z.number(), coverageFactor: z.number(), ...scale }),
    output: z.strictObject({ leastNetMassG: z.number() }),
    example: { errorShare: 0.01, coverageFactor: 2, resolutionG: 0.1, repeatabilityG: 0 },
    source: 'JCGM 100:2008 (GUM), 6.2.1',
    run: (q) => ({ leastNetMassG: leastNetMassG(q) }),
  }),
  calcEntry({
    id: 'weighing/relative-dose-error',
    input: z.strictObject({ netMassG: z.number(), coverageFactor: z.number(), ...scale }),
    output: z.strictObject({ errorShare: z.number() }),
    example: { netMassG: 2, coverageFactor: 2, resolutionG: 1, repeatabilityG: 0.5 },
    source: 'JCGM 100:2008 (GUM), 6.2.1',
    run: (q) => ({ errorShare: relativeDoseErrorShare(q) }),
  }),
  calcEntry({
    id: 'weighing/round-to-scale',
    input: z.strictObject({ massG: z.number(), resolutionG: z.number() }),
    output: z.strictObject({ massG: z.number() }),
    example: { massG: 12.34, resolutionG: 0.5 },
    source: 'the mark nearest to the mass, a half up; common practice, no source',
    run: (q) => ({ massG: roundToScaleG(q) }),
  }),
  calcEntry({
    id: 'weighing/plan-premix',
    input: z.strictObject({
      doseG: z.number(),
      errorShare: z.number(),
      coverageFactor: z.number(),
      scales: z.array(z.strictObject({ id: z.string(), ...scale, capacityG: z.number() })),
      mostCarrierG: z.number(),
      mostPremixG: z.number(),
    }),
    output: z.strictObject({
      outcome: z.enum(['direct', 'premix', 'not-possible']),
      steps: z.array(
        z.strictObject({
          takeG: z.number(),
          takeScaleId: z.string(),
          carrierG: z.number(),
          carrierScaleId: z.string(),
          totalG: z.number(),
          productShare: z.number(),
        }),
      ),
      portionG: z.nullable(z.number()),
      portionScaleId: z.nullable(z.string()),
      carrierInPortionG: z.nullable(z.number()),
      errorShare: z.nullable(z.number()),
      premixMadeG: z.nullable(z.number()),
      productLeftG: z.nullable(z.number()),
      cautions: z.array(z.enum(DUST_CAUTIONS)),
    }),
    example: {
      doseG: 0.4,
      errorShare: 0.05,
      coverageFactor: 2,
      scales: [
        { id: 'bench', resolutionG: 1, repeatabilityG: 0.5, capacityG: 15_000 },
        { id: 'fine', resolutionG: 0.1, repeatabilityG: 0.05, capacityG: 1000 },
      ],
      mostCarrierG: 200,
      mostPremixG: 1000,
    },
    source: 'law of propagation of uncertainty, JCGM 100:2008 (GUM), 5.1.2; the search is our own',
    run: (q) => {
      // A scale's own figures are checked for all scales alike.
      const plan = atFlatFields(
        (field) => (/^(resolutionG|repeatabilityG)$/.test(field) ? 'scales' : field),
        () => planPremix(q),
      )
      const cautions = [...DUST_CAUTIONS]
      if (plan.outcome !== 'not-possible') return { ...plan, cautions }
      const none = {
        portionG: null,
        portionScaleId: null,
        carrierInPortionG: null,
        premixMadeG: null,
        productLeftG: null,
      }
      return { outcome: plan.outcome, steps: [], ...none, errorShare: plan.bestErrorShare, cautions }
    },
  }),
] as const
