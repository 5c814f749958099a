import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import type { PlanFormat } from './plan-format'
import type { ArmShown } from './[trialId]/plan-seen'

/** How the mixing water of a dough is got, in a sentence. */
export function waterWords(water: ArmShown['water'], text: Words['trials'], format: PlanFormat, language: Language): string {
  const { plan } = text
  if (water.outcome !== 'known') return plan.waterUnknown[water.outcome]
  const { source } = water
  const temp = format.temp(water.waterTempC)
  switch (source.outcome) {
    case 'mix':
      return source.hotMassG === 0
        ? say(plan.waterCold, language, { temp })
        : say(plan.waterMix, language, { temp, cold: format.mass(source.coldMassG), hot: format.mass(source.hotMassG) })
    case 'ice':
      return say(plan.waterIce, language, { temp, cold: format.mass(source.coldMassG), ice: format.mass(source.iceMassG), share: format.pctWhole(source.iceMassG / water.waterG) })
    case 'not-possible':
      return say(plan.waterNot[source.reason], language, { temp, nearest: format.temp(source.reachableTempC) })
    default:
      return source satisfies never
  }
}
