import 'server-only'
import type { Costs } from '../evidence-costs/read-costs'
import type { EvidenceOfFormat1 } from './evidence-of-format-1'
import type { Shown } from '../evidence-shown/read-shown'

type Arm = Shown['arms'][number]

/** What a trial showed when it was decided on, whatever the format that it was kept in. */
export type Evidence = Pick<
  Shown,
  'trial' | 'declared' | 'isIndication' | 'headline' | 'conditions' | 'controlMean'
> & {
  bakery: string
  arms: Arm[]
  limits: (Shown['limits'] | EvidenceOfFormat1['limits'])[number][]
  /** Null where they were left out. */
  costs:
    | (Omit<Costs, 'rests'> & {
        /** Before a dough had one cost a loaf it was that of a good one, where those were counted. */
        loaf: 'any' | 'good'
      })
    | null
  /** `rows`: hash over the values of all rows; `hashes`: over the hashes of the readings that count. */
  readings: Shown['readings'] & { over: 'rows' | 'hashes' }
  frozen: EvidenceOfFormat1['frozen']
}
