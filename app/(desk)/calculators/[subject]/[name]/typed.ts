/** What stands in the fields of a form, by the fields' names; a group of ticks has several texts. */
export type Typed = Readonly<Record<string, readonly string[]>>

/** What one address may hold; of more nothing is read, and the page says so. */
export const mostCharacters = 100_000
const mostRows = 1_000

/** The parameters of an address as what stands in the form. */
export function typedOfParams(params: Readonly<Record<string, string | string[] | undefined>>): Typed {
  return Object.fromEntries(
    Object.entries(params).flatMap(([name, value]) =>
      value === undefined ? [] : [[name, Array.isArray(value) ? value : [value]]],
    ),
  )
}

/** Whether an address holds no more than is read. */
export function fitsAddress(typed: Typed): boolean {
  return (
    queryOf(typed).length <= mostCharacters &&
    !Object.keys(typed).some((name) => name.split('.').some((part) => Number(part) >= mostRows))
  )
}

/** The query of an address that holds everything typed. Empty fields are left out, unless there is nothing else. */
export function queryOf(typed: Typed): string {
  const pairs = Object.entries(typed).flatMap(([name, texts]) => texts.map((text) => [name, text] as [string, string]))
  const filled = pairs.filter(([, text]) => text !== '')
  return new URLSearchParams(filled.length > 0 ? filled : pairs.slice(0, 1)).toString()
}

/** The one text of a field, without blanks around it; empty when there is none. */
export function textAt(typed: Typed, name: string): string {
  return typed[name]?.[0]?.trim() ?? ''
}

/** Whether anything is typed in the field of this name or in one below it. */
export function hasTyped(typed: Typed, name: string): boolean {
  return Object.entries(typed).some(
    ([each, texts]) => (each === name || each.startsWith(`${name}.`)) && texts.some((text) => text.trim() !== ''),
  )
}

/** How many rows a table of the form has: one more than the highest number in it. */
export function rowCount(typed: Typed, name: string): number {
  const start = `${name}.`
  const numbers = Object.keys(typed).flatMap((each) =>
    each.startsWith(start) ? [Number(each.slice(start.length).split('.')[0])] : [],
  )
  return numbers.reduce((count, number) => (Number.isInteger(number) && number >= count ? number + 1 : count), 0)
}
