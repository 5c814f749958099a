import { describe, expect, test } from 'vitest'
import { AnswerText } from '@/app/(desk)/calculators/answer-text'
import { QuestionField } from '@/app/(desk)/calculators/[subject]/[name]/question-field'
import { sayerOf } from '@/app/(desk)/calculators/sayer'
import { catalogue } from '@/lib/calc/catalogue'
import type { CalcEntry } from '@/lib/calc/entry'
import { fieldsOfSchema, type FieldShape, type Shape } from '@/lib/kitchen/calculators/shape-of-schema'
import { units } from '@/lib/words/en/calculators/units'
import { elementsOf } from '@/tests/unit/ui/elements-of'

const entries: readonly CalcEntry[] = catalogue
const listed: Readonly<Record<string, string>> = units

const innermost = (shape: Shape): Shape => (shape.kind === 'list' ? innermost(shape.of) : shape)

/** Every number of a question or an answer, however deep. */
function numbersIn(fields: readonly FieldShape[]): FieldShape[] {
  return fields.flatMap((field) => {
    const inner = innermost(field.shape)
    return inner.kind === 'group' ? numbersIn(inner.fields) : inner.kind === 'number' ? [field] : []
  })
}

const wordsOf = (name: string) => name.split(/(?=[A-Z])/)

/** By hand and not by the code that is tested: the whole name, else the longest of its last words that is in the list. */
function unitOf(name: string): string | undefined {
  if (Object.hasOwn(listed, name)) return listed[name]
  const words = wordsOf(name)
  const tails = words.map((_, from) => words.slice(from).join(''))
  const tail = tails.find(
    (each, from) =>
      (from > 0 && Object.hasOwn(listed, each)) ||
      (from === 0 && each.includes('Per') && Object.hasOwn(listed, upper(each))),
  )
  return tail === undefined ? undefined : (listed[tail] ?? listed[upper(tail)])
}
const upper = (name: string) => name.charAt(0).toUpperCase() + name.slice(1)

const onScreen = (name: string) => (/Shares?$/.test(name) ? '%' : unitOf(name))
const textsOf = (node: Parameters<typeof elementsOf>[0]) =>
  elementsOf(node)
    .flatMap(({ props }) => [props.children].flat(3))
    .filter((text) => typeof text === 'string')

describe.each(entries)('$id', ({ id, input, output }) => {
  const sayer = sayerOf(id, 'en', 'en-GB')
  const asked = numbersIn(fieldsOfSchema(input, 'input'))
  const answered = numbersIn(fieldsOfSchema(output, 'output'))

  test('asks each number in the unit that its name ends in, shares as %', () => {
    for (const field of asked) {
      const unit = onScreen(field.name)
      const texts = textsOf(QuestionField({ field, at: field.name, typed: {}, faults: new Map(), sayer }))
      if (unit !== undefined)
        expect(
          texts.some((text) => text === unit || text.startsWith(`${unit}. `)),
          `${field.name}: ${unit} is not among ${texts.join(' | ')}`,
        ).toBe(true)
      expect(sayer.own.screenUnit(field.name), field.name).toBe(unit)
    }
  })

  test('answers each number in the unit that its name ends in, shares as %', () => {
    for (const { name } of answered) {
      const unit = onScreen(name)
      const texts = textsOf(AnswerText({ name, value: 0.25, sayer }))
      if (unit !== undefined) expect(texts, name).toContain(unit)
      if (/Share$/.test(name)) expect(texts, name).toContain('25')
    }
  })

  test('keeps the unit of its name in JSON', () => {
    for (const { name } of [...asked, ...answered]) expect(sayer.own.unit(name), name).toBe(unitOf(name))
  })

  test('has no number whose name holds a unit that the list does not know', () => {
    const named = [...asked, ...answered].map(({ name }) => name)
    expect(
      named.filter((name) => unitOf(name) === undefined && hasUnitWord(name) && !countsOrFactors.has(name)),
    ).toEqual([])
  })
})

/** Words of measures; of 'G', 'Kg', 'Ml' any in the name is one, also before 'Per'. */
const unitWords = new Set([
  'G',
  'Kg',
  'Mg',
  'Ml',
  'L',
  'Um',
  'Mm',
  'Cm',
  'C',
  'K',
  'S',
  'Min',
  'H',
  'J',
  'W',
  'Pct',
  'Share',
  'Shares',
  'Ppm',
  'Per',
])
const hasUnitWord = (name: string) =>
  [upper(wordsOf(name)[0] ?? ''), ...wordsOf(name).slice(1)].some(
    (word, i) => (i > 0 || word.length > 1) && unitWords.has(word),
  )

/** So many of one for each of another, and factors: plain numbers. */
const countsOrFactors = new Set([
  'armBatchesPerBlock',
  'batchesPerArm',
  'batchesPerBlock',
  'controlBatchesPerBlock',
  'countPerArm',
  'loavesPerBatch',
  'mostBatchesPerBlock',
  'mostLoavesPerBatch',
  'neededGainPerDose',
  'ordersPerYear',
  'share',
  'timesPer10Colder',
  'unitsPerKgFlour',
])
