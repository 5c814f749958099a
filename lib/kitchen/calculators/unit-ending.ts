import 'server-only'
import { units } from '../../words/en/calculators/units'

export type UnitEnding = keyof typeof units

const longestFirst = (Object.keys(units) as UnitEnding[]).sort((a, b) => b.length - a.length)

/**
 * The unit ending of a field's name.
 * @returns undefined for a plain number, a text or a choice
 * @example unitEnding('specificVolumeMlPerG') // 'MlPerG'
 */
export function unitEnding(name: string): UnitEnding | undefined {
  return longestFirst.find((ending) => name.endsWith(ending) && /[a-z0-9]$/.test(name.slice(0, -ending.length)))
}
