import 'server-only'

type Plan = { scalingMassG: number; doughTempC: number; proofTimeS: number; waterG: number | null }

/** What the plan says of a measure of one dough, in its base unit (g, °C, s); null where it says nothing. */
export function plannedValue(
  code: string | null,
  { scalingMassG, doughTempC, proofTimeS, waterG }: Plan,
): number | null {
  switch (code) {
    case 'water-added':
      return waterG
    case 'dough-temp':
      return doughTempC
    case 'proof-time':
      return proofTimeS
    case 'dough-mass':
      return scalingMassG
    default:
      return null
  }
}
