import { massInUnit, type MassUnit } from '../../words/format/mass'

/** A mass as somebody types it, with no more digits than a scale has. */
export function plainMass(massG: number, unit: MassUnit): string {
  return String(Number(massInUnit(massG, unit).toFixed(4)))
}
