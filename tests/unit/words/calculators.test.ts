import { describe, expect, test } from 'vitest'
import { z } from 'zod'
import { catalogue } from '@/lib/calc/catalogue'
import type { CalcEntry } from '@/lib/calc/entry'
import { sourceFilesIn } from '@/tests/support/source-files'

const wordsShape = z.strictObject({
  subject: z.string().min(1),
  titles: z.record(z.string(), z.string().min(1)),
  fields: z.record(z.string(), z.string().min(1)),
  choices: z.record(z.string(), z.string().min(1)),
})

const folder = 'lib/words/en/calculators'
const words = new Map<string, z.output<typeof wordsShape>>()
for (const file of sourceFilesIn(folder)) {
  const subject = file.slice(folder.length + 1, -'.ts'.length)
  const module = (await import(`../../../lib/words/en/calculators/${subject}.ts`)) as Record<string, unknown>
  for (const value of Object.values(module)) {
    const found = wordsShape.safeParse(value)
    if (found.success) words.set(subject, found.data)
  }
}

/** Names of fields and choices in a shape, however deep. */
function namesIn(schema: z.core.$ZodType): { fields: string[]; choices: string[] } {
  if (schema instanceof z.ZodObject) {
    const inner = Object.values(schema.shape as Record<string, z.core.$ZodType>).map(namesIn)
    return {
      fields: [...Object.keys(schema.shape), ...inner.flatMap(({ fields }) => fields)],
      choices: inner.flatMap(({ choices }) => choices),
    }
  }
  if (schema instanceof z.ZodArray) return namesIn(schema.element)
  if (schema instanceof z.ZodOptional || schema instanceof z.ZodNullable) return namesIn(schema.unwrap())
  if (schema instanceof z.ZodEnum) return { fields: [], choices: schema.options.map(String) }
  return { fields: [], choices: [] }
}

const entries: readonly CalcEntry[] = catalogue
const subjects = [...new Set(entries.map(({ id }) => id.split('/')[0]!))]

describe.each(subjects)('%s', (subject) => {
  const own = entries.filter(({ id }) => id.startsWith(`${subject}/`))
  const names = own.flatMap(({ input, output }) => [namesIn(input), namesIn(output)])
  const named = words.get(subject)

  test('has words for each title, field and choice', () => {
    const missing = {
      titles: own.map(({ id }) => id).filter((id) => named?.titles[id] === undefined),
      fields: [...new Set(names.flatMap(({ fields }) => fields))].filter((field) => named?.fields[field] === undefined),
      choices: [...new Set(names.flatMap(({ choices }) => choices))].filter(
        (choice) => named?.choices[choice] === undefined,
      ),
    }
    expect(missing).toEqual({ titles: [], fields: [], choices: [] })
  })

  test('has no words that nothing uses', () => {
    const fields = names.flatMap((each) => each.fields)
    const choices = names.flatMap((each) => each.choices)
    expect(Object.keys(named?.titles ?? {}).filter((id) => !own.some((entry) => entry.id === id))).toEqual([])
    expect(Object.keys(named?.fields ?? {}).filter((field) => !fields.includes(field))).toEqual([])
    expect(Object.keys(named?.choices ?? {}).filter((choice) => !choices.includes(choice))).toEqual([])
  })
})
