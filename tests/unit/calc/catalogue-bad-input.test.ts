import { describe, expect, test } from 'vitest'
import { catalogue } from '@/lib/calc/catalogue'
import type { CalcEntry } from '@/lib/calc/entry'
import { CalcError } from '@/lib/calc/error'

const entries: readonly CalcEntry[] = catalogue
type Json = number | string | boolean | Json[] | { [key: string]: Json }

const hostile = [0, -1, 1e-300, 1e300, -1e300, 0.5, 101] as const
const MANY = 10_000

/** The example with one thing in it made hostile, for every thing in it. */
function* spoiled(value: Json, path: string): Generator<[string, Json]> {
  if (typeof value === 'number') {
    for (const bad of hostile) yield [`${path} = ${bad}`, bad]
  } else if (Array.isArray(value)) {
    yield [`${path} empty`, []]
    yield [`${path} with the first alone`, value.slice(0, 1)]
    yield [`${path} all alike`, value.map(() => structuredClone(value[0]!))]
    yield [`${path} with ${MANY}`, Array.from({ length: MANY }, (_, i) => numbered(value[i % value.length]!, i))]
    for (const [i, one] of value.slice(0, 2).entries()) {
      for (const [what, bad] of spoiled(one, `${path}[${i}]`))
        yield [what, value.map((other, j) => (j === i ? bad : other))]
    }
  } else if (typeof value === 'object') {
    for (const [key, one] of Object.entries(value)) {
      for (const [what, bad] of spoiled(one, path === '' ? key : `${path}.${key}`))
        yield [what, { ...value, [key]: bad }]
    }
  } else if (typeof value === 'string') {
    yield [`${path} = ''`, '']
  }
}

/** A copy that is not quite the one before: what names it gets a number, and figures differ in the last digits. */
function numbered(value: Json, i: number): Json {
  if (typeof value === 'number') return value * (1 + 1e-6 * (i % 97))
  if (typeof value !== 'object' || Array.isArray(value)) return value
  return Object.fromEntries(
    Object.entries(value).map(([key, one]) => [
      key,
      typeof one === 'string' && ['id', 'loaf', 'name'].includes(key) ? `${one} ${i}` : one,
    ]),
  )
}

describe.each(entries)('$id', (entry) => {
  test('answers in figures or refuses by a field of the question, whatever one thing in it is', () => {
    const odd: string[] = []
    for (const [what, question] of spoiled(entry.example as Json, '')) {
      const input = entry.input.safeParse(question)
      if (!input.success) continue
      try {
        const output = entry.output.safeParse(entry.run(input.data))
        if (!output.success)
          odd.push(
            `${what}: answers what is no answer, ${output.error.issues[0]?.path.join('.')}: ${output.error.issues[0]?.message}`,
          )
      } catch (error) {
        if (!(error instanceof CalcError)) odd.push(`${what}: ${String(error)}`)
        else if (!((/^\w+/.exec(error.facts.field)?.[0] ?? '') in entry.input.shape))
          odd.push(`${what}: refused at '${error.facts.field}', which is not asked for`)
      }
    }
    expect(odd, odd.join('\n')).toEqual([])
  })
})
