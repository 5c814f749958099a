import 'server-only'
import { units } from '../../words/en/calculators/units'

export type UnitEnding = keyof typeof units

const longestFirst = (Object.keys(units) as UnitEnding[]).sort((a, b) => b.length - a.length)

/**
 * The unit ending of a field's name.
 * A name that is nothing but a ratio has that ratio's unit: `mgPerKg` is mg/kg, not 'per kg'. Other names that are
 * nothing but a unit are in the list as they are: `minutes`.
 * @returns undefined for a plain number, a text or a choice
 * @example unitEnding('specificVolumeMlPerG') // 'MlPerG'
 */
export function unitEnding(name: string): UnitEnding | undefined {
  return longestFirst.find(
    (ending) =>
      (name === ending && /^[a-z]/.test(ending)) ||
      (ending.includes('Per') && name === lowerFirst(ending)) ||
      (name.endsWith(ending) && /^[A-Z]/.test(ending) && /[a-z0-9]$/.test(name.slice(0, -ending.length))),
  )
}

const lowerFirst = (ending: string) => ending.charAt(0).toLowerCase() + ending.slice(1)
