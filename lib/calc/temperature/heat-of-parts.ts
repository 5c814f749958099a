import { mustBeWithin } from '../checks'

export type HeatPart = { massG: number; tempC: number; specificHeatJPerGK: number }

export type HeatOfParts = {
  /** Heat that parts and bowl take up on their way to the dough's temperature; negative when they give it off. */
  heatJ: number
  /** Heat capacity and mass of the parts alone. */
  partsJPerK: number
  partsMassG: number
}

/**
 * Heat that a dough's ingredients and bowl take up to reach a temperature: Q = Σ m · c · (T − Tᵢ).
 * @param doughTempC temperature that all come to, °C
 * @param parts mass g ≥ 0, temperature −40 to 100 °C, specific heat above 0 to 5 J/(g·K)
 * @param bowl heat capacity J/K ≥ 0, temperature −40 to 100 °C; null when it is left out
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: heat balance.
 */
export function heatOfParts(q: {
  doughTempC: number
  parts: readonly HeatPart[]
  bowl: { heatCapacityJPerK: number; tempC: number } | null
}): HeatOfParts {
  let heatJ = 0
  let partsJPerK = 0
  let partsMassG = 0
  q.parts.forEach((part, i) => {
    mustBeWithin(`parts[${i}].massG`, part.massG, { min: 0 })
    mustBeWithin(`parts[${i}].tempC`, part.tempC, { min: -40, max: 100 })
    mustBeWithin(`parts[${i}].specificHeatJPerGK`, part.specificHeatJPerGK, { over: 0, max: 5 })
    const jPerK = part.massG * part.specificHeatJPerGK
    partsJPerK += jPerK
    partsMassG += part.massG
    heatJ += jPerK * (q.doughTempC - part.tempC)
  })
  if (q.bowl !== null) {
    mustBeWithin('bowl.heatCapacityJPerK', q.bowl.heatCapacityJPerK, { min: 0 })
    mustBeWithin('bowl.tempC', q.bowl.tempC, { min: -40, max: 100 })
    heatJ += q.bowl.heatCapacityJPerK * (q.doughTempC - q.bowl.tempC)
  }
  return { heatJ, partsJPerK, partsMassG }
}
