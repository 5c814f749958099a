import 'server-only'
import type { Shown } from '../../documents/evidence-shown/read-shown'
import type { ArmResult } from '../results/compare-arms'
import type { ComparedOtherwise } from '../results/compare-otherwise'
import type { HeadlineComparison } from '../results/headline-from'
import type { WorkedOut } from './work-out'

type Arm = Omit<Shown['arms'][number], 'id' | 'name' | 'good'>

/** The figures of a result as evidence has them: whoever keeps it and whoever works it out again get them here. */
export type FiguresShown = Omit<Shown, 'calculations' | 'trial' | 'declared' | 'arms' | 'headline' | 'readings'> & {
  arms: Arm[]
}

/** @throws Error for a trial of which nothing is compared yet */
export function figuresShown({ analysis, otherwise }: Omit<WorkedOut, 'headline'>): FiguresShown {
  const { comparison, limits, uncounted } = analysis
  if (!comparison) throw nothingCompared()
  const { levels } = comparison
  return {
    ...comparison,
    arms: comparison.arms.map(armShown),
    levels: levels && { ...levels, levels: [...levels.levels] },
    limits: limits.map(({ code, arm, facts }) => ({ code, arm, facts: { ...facts } })),
    uncounted: uncounted.map(({ batch, why }) => ({ batch: batch.id, code: batch.code, arm: batch.arm, why })),
    withTakenOut: otherwiseShown(otherwise.withTakenOut),
    asLastWeighed: otherwiseShown(otherwise.asLastWeighed),
  }
}

/** What the headline of a result rests on, as evidence has it. @throws Error for a trial of which nothing is compared yet */
export function headlineShown({ comparison, lessFavourableOf }: HeadlineComparison): NonNullable<Shown['headline']> {
  if (!comparison) throw nothingCompared()
  return { isIndication: comparison.isIndication, arms: comparison.arms.map(armShown), lessFavourableOf }
}

function nothingCompared(): Error {
  return new Error('a trial that is ended has a comparison, if only an empty one')
}

function otherwiseShown(compared: ComparedOtherwise | null): FiguresShown['withTakenOut'] {
  return compared && { codes: compared.codes, arms: compared.comparison.arms.map(armShown) }
}

function armShown(arm: ArmResult): Arm {
  return { ...arm, doubts: [...arm.doubts] }
}
