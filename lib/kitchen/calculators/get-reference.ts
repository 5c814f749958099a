import 'server-only'
import { z } from 'zod'
import { catalogue } from '../../calc/catalogue'
import type { CalcEntry } from '../../calc/entry'
import { inPool } from '../heavy/in-pool'
import { keepLast } from '../heavy/keep-last'
import { query } from '../query'
import { Refusal } from '../refusal'
import { fieldsOfSchema, type FieldShape } from './shape-of-schema'

export type Described = {
  id: string
  source: string
  asks: readonly FieldShape[]
  gives: readonly FieldShape[]
  example: unknown
  answer: unknown
}

// The catalogue does not change while the app runs, and some examples take their time.
const described = keepLast<readonly Described[]>(100)

/**
 * The public calculations of a subject whole: what each asks for and gives, its example with the answer, its source.
 * Refuses: not-found, took-too-long, not-worked-out.
 */
export const getReference = query({
  name: 'calculators.get-reference',
  input: z.strictObject({ subject: z.string() }),
  right: 'read-work',
  async run({ input: { subject } }) {
    const own = (catalogue as readonly CalcEntry[]).filter(({ id }) => id.startsWith(`${subject}/`))
    if (own.length === 0) throw new Refusal('not-found')
    return { calculations: await described(subject, () => describeAll(own)) }
  },
})

/** One after the other, so that others get their turn in between. */
async function describeAll(entries: readonly CalcEntry[]): Promise<Described[]> {
  const all: Described[] = []
  for (const { id, source, input, output, example } of entries) {
    const worked = await inPool('work-out', { id, given: example })
    if (!worked.ok) throw new Error(`the example of ${id} is refused`)
    all.push({
      id,
      source,
      asks: fieldsOfSchema(input, 'input'),
      gives: fieldsOfSchema(output, 'output'),
      example,
      answer: worked.answer,
    })
  }
  return all
}
