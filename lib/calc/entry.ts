import type { z } from 'zod'
import { finiteAnswer } from './finite-answer'

/**
 * One row of the catalogue: a public calculation, whole enough to make its form, its command line and its page of
 * the reference from. Titles and the names of fields are words, in lib/words/en/calculators/<subject>.ts.
 */
export type CalcEntry<
  Id extends string = string,
  Input extends z.ZodObject = z.ZodObject,
  Output extends z.ZodType = z.ZodType,
> = {
  /** `subject/name`: the folder in lib/calc and the file in it. */
  id: Id
  /** Shapes only: types, lists, choices. Bounds are the calculation's own guards, which name field and reason. */
  input: Input
  output: Output
  /** A worked example that runs as it stands; invented figures unless the source has one. */
  example: z.input<Input>
  /** Author, year, section or table; or 'common practice, no source'. */
  source: string
  run(input: z.output<Input>): z.output<Output>
}

/** Holds an entry to its own types, example to input and answer to output, and its answers to finite numbers. */
export function calcEntry<const Id extends string, Input extends z.ZodObject, Output extends z.ZodType>(
  entry: CalcEntry<Id, Input, Output>,
): CalcEntry<Id, Input, Output> {
  return { ...entry, run: (input) => finiteAnswer(input, entry.run(input)) }
}
