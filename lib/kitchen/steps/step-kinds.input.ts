import { z } from 'zod'

/** What is done with a dough, in the order of the trade. Bulk fermentation begins when a dough is mixed. */
export const stepKinds = [
  'mixing_begun',
  'mixed',
  'folded',
  'scaled',
  'pre_shaped',
  'moulded',
  'retarding_begun',
  'proof_begun',
  'scored',
  'in_oven',
  'out_of_oven',
  'cooled',
] as const

export const stepKind = z.enum(stepKinds)
export type StepKind = z.output<typeof stepKind>

/** What is said of a step beside when it was. */
export type StepDetail = 'setting' | 'chamberTempC' | 'place' | 'setTempC' | 'readTempC' | 'steam' | 'beside'

/** What each step can say of itself; the others say only when they were. */
export const detailsOfStep: Readonly<Partial<Record<StepKind, readonly StepDetail[]>>> = {
  moulded: ['setting'],
  retarding_begun: ['chamberTempC'],
  proof_begun: ['chamberTempC'],
  in_oven: ['place', 'setTempC', 'readTempC', 'steam', 'beside'],
}

/** Every detail that a step of some kind has. */
export const stepDetails = [...new Set(Object.values(detailsOfStep).flat())]
