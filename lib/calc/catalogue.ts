import { colourEntries } from './colour/entries'
import type { CalcEntry } from './entry'
import { panelEntries } from './panel/entries'
import { squaresEntries } from './squares/entries'
import { weighingEntries } from './weighing/entries'

/** Every public calculation once. A calculation that is not here is not public. */
export const catalogue = [
  ...colourEntries,
  ...panelEntries,
  ...squaresEntries,
  ...weighingEntries,
] as const

export type CalcId = (typeof catalogue)[number]['id']

/** The entry of that id, or undefined: an id comes from an address or a command line. */
export function findEntry(id: string): CalcEntry | undefined {
  const entries: readonly CalcEntry[] = catalogue
  return entries.find((entry) => entry.id === id)
}
