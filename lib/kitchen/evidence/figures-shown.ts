import 'server-only'
import type { ShownOfFormat1 } from '../../documents/evidence-shown/shown-of-format-1'
import type { ArmResult } from '../results/compare-arms'
import type { WorkedOut } from './work-out'

type Arm = Omit<ShownOfFormat1['arms'][number], 'id' | 'name' | 'good'>

/** The figures of a result as evidence has them: whoever keeps it and whoever works it out again get them here. */
export type FiguresShown = Omit<
  ShownOfFormat1,
  'format' | 'calculations' | 'trial' | 'declared' | 'arms' | 'readings'
> & { arms: Arm[] }

/** @throws Error for a trial of which nothing is compared yet */
export function figuresShown({ analysis, withTakenOut }: WorkedOut): FiguresShown {
  const { comparison, limits, uncounted } = analysis
  if (!comparison) throw new Error('a trial that is ended has a comparison, if only an empty one')
  const { levels } = comparison
  return {
    ...comparison,
    arms: comparison.arms.map(armShown),
    levels: levels && { ...levels, levels: [...levels.levels] },
    limits: limits.map(({ code, arm, facts }) => ({ code, arm, facts: { ...facts } })),
    uncounted: uncounted.map(({ batch, why }) => ({ batch: batch.id, code: batch.code, arm: batch.arm, why })),
    withTakenOut: withTakenOut && {
      codes: withTakenOut.codes,
      arms: withTakenOut.comparison.arms.map(armShown),
    },
  }
}

function armShown(arm: ArmResult): Arm {
  return { ...arm, doubts: [...arm.doubts] }
}
