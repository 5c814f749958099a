import 'server-only'
import { gramsPerUnit } from '../../words/format/mass'

/** base = (entered − minus) × times ÷ by */
export type UnitFactor = { times: string; by?: string; minus?: string }

/**
 * Units in which a reading may be entered, by the measure's base unit, with exact factors. A pound is 453.59237 g and
 * an ounce a sixteenth of it; t/°C = (t/°F − 32) × 5 / 9.
 * Source: NIST Special Publication 811 (2008), appendix B.8; the pound's digits beyond its rounded factor: NIST
 * Handbook 44, appendix C. Both from memory.
 */
export const unitFactors: Readonly<Record<string, Readonly<Record<string, UnitFactor>>>> = {
  g: Object.fromEntries(Object.entries(gramsPerUnit).map(([unit, grams]) => [unit, { times: String(grams) }])),
  mL: { mL: { times: '1' }, L: { times: '1000' } },
  s: { s: { times: '1' }, min: { times: '60' }, h: { times: '3600' } },
  '°C': { '°C': { times: '1' }, '°F': { times: '5', by: '9', minus: '32' } },
}
