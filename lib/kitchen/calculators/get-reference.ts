import 'server-only'
import { z } from 'zod'
import { catalogue } from '../../calc/catalogue'
import type { CalcEntry } from '../../calc/entry'
import { query } from '../query'
import { Refusal } from '../refusal'
import { fieldsOfSchema, type FieldShape } from './shape-of-schema'

export type Described = { id: string; source: string; asks: readonly FieldShape[]; gives: readonly FieldShape[]; example: unknown; answer: unknown }

// The catalogue does not change while the app runs, and some examples take their time.
const described = new Map<string, readonly Described[]>()

/**
 * The public calculations of a subject whole: what each asks for and gives, its example with the answer, its source.
 * Refuses: not-found.
 */
export const getReference = query({
  name: 'calculators.get-reference',
  input: z.strictObject({ subject: z.string() }),
  right: 'read-work',
  async run({ input: { subject } }) {
    const own = (catalogue as readonly CalcEntry[]).filter(({ id }) => id.startsWith(`${subject}/`))
    if (own.length === 0) throw new Refusal('not-found')
    const calculations = described.get(subject) ?? own.map(describe)
    described.set(subject, calculations)
    return { calculations }
  },
})

function describe({ id, source, input, output, example, run }: CalcEntry): Described {
  return { id, source, asks: fieldsOfSchema(input, 'input'), gives: fieldsOfSchema(output, 'output'), example, answer: run(input.parse(example)) }
}
