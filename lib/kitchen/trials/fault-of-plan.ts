import 'server-only'
import type { CalcErrorFacts } from '../../calc/error'
import type { RefusalCode } from '../messages'

/** Where a baker looks, by the name of the figure that a calculation refused. The first that fits is taken. */
const places = [
  [/[tT]emp(C|F)?$/, 'plan-not-possible-temperatures'],
  [/(resolution|repeatability|capacity|leastLoad)G$|[sS]cales?$/, 'plan-not-possible-scales'],
  [/(water|protein|fat|carbohydrate|sugars|fibre|ash|salt)Pct$|sodiumMg|[sS]hare$/, 'plan-not-possible-composition'],
  [/[mM]assG?$|[dD]ose|[pP]ctFlour$|lines|control|added/, 'plan-not-possible-masses'],
] as const satisfies readonly (readonly [RegExp, RefusalCode])[]

/** Every refusal of a plan that cannot be worked out. */
export const planFaults = ['plan-not-possible', ...places.map(([, code]) => code)] as const satisfies readonly RefusalCode[]

/** The refusal for a figure that no plan can be worked out from: where to look, never the figure's own name in the code. */
export function faultOfPlan({ field }: CalcErrorFacts): (typeof planFaults)[number] {
  const name = field.split('.').at(-1) ?? field
  return places.find(([pattern]) => pattern.test(name) || pattern.test(field))?.[1] ?? 'plan-not-possible'
}
