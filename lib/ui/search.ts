/** What can be chosen: at least an id, and the name by which people know it. */
export type Choice = { id: string; name: string }

/** The first of what was found, how many there are in all, and the one that what was typed is the whole name of. */
export type Found<Option extends Choice> = { options: readonly Option[]; count: number; named: Option | null }

/** Looks for what has a part in its name; rejects where no answer comes, or the signal says that nobody waits for it. */
export type Find<Option extends Choice> = (part: string, signal: AbortSignal) => Promise<Found<Option>>

/** What stands in a field that is searched: the id of what was chosen, empty where nothing is, and the text. */
export type SearchValue = { id: string; text: string }

/** Name of the field that keeps the text, beside the one that sends the id, so that a draft or a refused form shows it again. */
export function textName(name: string): string {
  return `${name}.text`
}
