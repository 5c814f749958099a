import 'server-only'
import { fromScreen } from '@/lib/kitchen/calculators/on-screen'
import type { FieldShape, Shape } from '@/lib/kitchen/calculators/shape-of-schema'
import { unitEnding } from '@/lib/kitchen/calculators/unit-ending'
import { readDecimal } from '@/lib/words/format/read-decimal'
import { hasTyped, rowCount, textAt, type Typed } from './typed'

/**
 * What was typed in a form as the question to a calculation, in the bakery's own decimal mark. What is empty is left
 * out; what cannot be read stays the text that it is, so that it is refused at its field. A share
 * is typed as %.
 * @param path of the group of fields in the form; empty for the form itself
 */
export function readTyped(
  fields: readonly FieldShape[],
  typed: Typed,
  locale: string,
  path = '',
): Record<string, unknown> {
  return Object.fromEntries(
    fields.flatMap((field) => {
      const value = valueOf(field, typed, locale, `${path}${field.name}`)
      return value === undefined ? [] : [[field.name, value]]
    }),
  )
}

function valueOf(
  { name, shape, isOptional, isNullable }: FieldShape,
  typed: Typed,
  locale: string,
  at: string,
): unknown {
  if (hasTyped(typed, at) || !(isOptional || isNullable)) return read(shape, typed, locale, at, name)
  return isOptional ? undefined : null
}

function read(shape: Shape, typed: Typed, locale: string, at: string, name: string): unknown {
  const text = textAt(typed, at)
  switch (shape.kind) {
    case 'group':
      return readTyped(shape.fields, typed, locale, `${at}.`)
    case 'list':
      return readList(shape.of, typed, locale, at, name)
    case 'number':
      return text === '' ? undefined : numberOf(text, locale, name)
    case 'text':
      // An amount that must keep every digit is a text of digits; it has a unit, and the bakery's own mark.
      return text === '' ? undefined : unitEnding(name) ? (readDecimal(text, locale) ?? text) : text
    case 'yes-no':
      return text === 'yes' ? true : text === 'no' ? false : undefined
    case 'choice':
      return text === '' ? undefined : choiceOf(shape.values, text)
    case 'other':
      return text === '' ? undefined : fromJson(text)
    default:
      return shape satisfies never
  }
}

function readList(of: Shape, typed: Typed, locale: string, at: string, name: string): unknown[] {
  const lines = (typed[at]?.[0] ?? '')
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '')
  switch (of.kind) {
    case 'number':
      return lines.flatMap((line) => numbersOf(line, locale, name))
    case 'choice':
      return (typed[at] ?? []).filter((text) => text !== '').map((text) => choiceOf(of.values, text))
    case 'text':
      return lines
    case 'group':
      return Array.from({ length: filledRows(typed, at) }, (_, row) =>
        readTyped(of.fields, typed, locale, `${at}.${row}.`),
      )
    default:
      return isNumbers(of) ? lines.map((line) => numbersOf(line, locale, name)) : jsonList(lines.join('\n'))
  }
}

/** A list of numbers that is itself in a list: one on each line. */
export function isNumbers(of: Shape): boolean {
  return of.kind === 'list' && of.of.kind === 'number'
}

/** Rows up to the last one in which something is typed: an empty one in between is not passed over. */
function filledRows(typed: Typed, at: string): number {
  let count = rowCount(typed, at)
  while (count > 0 && !hasTyped(typed, `${at}.${count - 1}`)) count--
  return count
}

const numbersOf = (line: string, locale: string, name: string) =>
  line
    .split(/[\s;]+|,(?=\s|$)/)
    .filter((part) => part !== '')
    .map((part) => numberOf(part, locale, name))

function numberOf(text: string, locale: string, name: string): number | string {
  const decimal = readDecimal(text, locale)
  return decimal === null ? text : fromScreen(name, decimal)
}

const choiceOf = (values: readonly (string | number)[], text: string) =>
  values.find((value) => String(value) === text) ?? text

function fromJson(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    // Not the form that is asked for: the schema says so at the field.
    return text
  }
}

function jsonList(text: string): unknown[] {
  const value = text === '' ? [] : fromJson(text)
  return Array.isArray(value) ? value : [value]
}
