import 'server-only'

/** The one unit that a tablet or a sheet of paper asks in: a clock on the wall shows minutes, and a thermometer what the bakery uses. */
export function unitToEnter(baseUnit: string, temperatures: 'celsius' | 'fahrenheit'): string {
  if (baseUnit === 's') return 'min'
  return baseUnit === '°C' && temperatures === 'fahrenheit' ? '°F' : baseUnit
}
