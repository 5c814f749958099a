import 'server-only'
import type { CalcEntry } from '../../calc/entry'
import { listOf } from '../../words/list-of'
import { say } from '../../words/say'
import { wordsIn, type Language } from '../../words/words'
import { calculationWords, type CalculationWords } from './calculation-words'
import { kindWords } from './kind-words'
import { rangeOfField } from './range-of-field'
import { fieldsOfSchema, type FieldShape, type Shape } from './shape-of-schema'

/** Ends from here on only keep squares finite; they say nothing of what is measured. */
const NO_END = 1e100

type Told = { name: string; kind: string; range: string; label: string }
type Step = string | number

/**
 * A calculation as a page of text: what it asks for and gives, each field with its name in JSON, kind, unit, choices,
 * range and what it means; an example; its source.
 */
export function helpOfCalculation(entry: CalcEntry, language: Language): string {
  const words = calculationWords(entry.id, language)
  const { commandLine } = wordsIn(language).calculators
  const asks = told(fieldsOfSchema(entry.input, 'input'), {
    words,
    language,
    entry,
    example: entry.example,
    path: [],
    depth: 0,
  })
  const gives = told(fieldsOfSchema(entry.output, 'output'), { words, language, path: [], depth: 0 })
  return [
    `${entry.id}: ${words.title}`,
    say(commandLine.source, language, { source: entry.source }),
    '',
    commandLine.asks,
    ...inColumns(asks),
    '',
    commandLine.gives,
    ...inColumns(gives),
    '',
    commandLine.example,
    JSON.stringify(entry.example),
    '',
  ].join('\n')
}

type About = {
  words: CalculationWords
  language: Language
  entry?: CalcEntry
  example?: unknown
  path: readonly Step[]
  depth: number
}

function told(fields: readonly FieldShape[], about: About): Told[] {
  return fields.flatMap((field) => {
    const { words, depth } = about
    const example = valueOf(about.example, field.name)
    const [shape, path, inner] = within(field.shape, [...about.path, field.name], example)
    const own: Told = {
      name: `${'  '.repeat(depth + 1)}${field.name}`,
      kind: kindOf(field, about),
      range:
        about.entry && shape.kind === 'number' && typeof inner === 'number'
          ? rangeText(rangeOfField(about.entry, path), about.language)
          : '',
      label: words.field(field.name),
    }
    return [
      own,
      ...(shape.kind === 'group' ? told(shape.fields, { ...about, example: inner, path, depth: depth + 1 }) : []),
    ]
  })
}

/** What is in the lists of a shape, with the path and the example of the first one. */
function within(shape: Shape, path: readonly Step[], example: unknown): [Shape, readonly Step[], unknown] {
  if (shape.kind !== 'list') return [shape, path, example]
  return within(shape.of, [...path, 0], Array.isArray(example) ? example[0] : undefined)
}

function valueOf(example: unknown, name: string): unknown {
  return typeof example === 'object' && example !== null && Object.hasOwn(example, name)
    ? Object.entries(example).find(([own]) => own === name)?.[1]
    : undefined
}

function kindOf(field: FieldShape, { words, language }: About): string {
  const [kind = '', ...remarks] = kindWords(field, language)
  return listOf([kind, words.unit(field.name) ?? [], remarks].flat(), language)
}

function rangeText({ min, max, isMinIn, isMaxIn }: ReturnType<typeof rangeOfField>, language: Language): string {
  const { commandLine: text } = wordsIn(language).calculators
  const isNone = (end: number | undefined): end is undefined => end === undefined || Math.abs(end) >= NO_END
  if (isNone(min)) return isNone(max) ? '' : say(isMaxIn ? text.atMost : text.below, language, { value: max })
  if (isNone(max)) return say(isMinIn ? text.atLeast : text.above, language, { value: min })
  const both = isMinIn
    ? isMaxIn
      ? text.range.fromTo
      : text.range.fromBelow
    : isMaxIn
      ? text.range.aboveTo
      : text.range.aboveBelow
  return say(both, language, { min, max })
}

function inColumns(rows: readonly Told[]): string[] {
  const widest = (column: 'name' | 'kind' | 'range') =>
    Math.min(48, Math.max(0, ...rows.map((row) => row[column].length)))
  const [name, kind, range] = [widest('name'), widest('kind'), widest('range')]
  return rows.map((row) =>
    [row.name.padEnd(name), row.kind.padEnd(kind), ...(range === 0 ? [] : [row.range.padEnd(range)]), row.label]
      .join('  ')
      .trimEnd(),
  )
}
