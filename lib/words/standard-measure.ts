import type { Words } from './words'

/** A measure as a row or a frozen text has it. Only those of every bakery have a code. */
export type NamedMeasure = { code: string | null; name: string }
type Standard = Words['measures']['standard']

/** The words of a measure that every bakery has; undefined for one of a bakery's own. */
export function standardMeasure(
  code: string | null,
  { measures }: Pick<Words, 'measures'>,
): Standard[keyof Standard] | undefined {
  return code !== null && Object.hasOwn(measures.standard, code) ? measures.standard[code as keyof Standard] : undefined
}
