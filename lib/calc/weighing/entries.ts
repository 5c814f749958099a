import { z } from 'zod'
import { calcEntry } from '../entry'
import { leastNetMassG } from './least-net-mass'
import { netWeightUncertaintyG } from './net-weight-uncertainty'

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
    output: z.strictObject({ netMassG: z.number() }),
    example: { errorShare: 0.01, coverageFactor: 2, resolutionG: 0.1, repeatabilityG: 0 },
    source: 'JCGM 100:2008 (GUM), 6.2.1',
    run: (q) => ({ netMassG: leastNetMassG(q) }),
  }),
] as const
