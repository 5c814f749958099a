import 'server-only'
import { toScreenText } from '@/lib/kitchen/calculators/on-screen'
import type { FieldShape, Shape } from '@/lib/kitchen/calculators/shape-of-schema'
import { unitEnding } from '@/lib/kitchen/calculators/unit-ending'
import { numberFormOf } from '@/lib/words/format/kept-forms'
import { plainNumber } from '@/lib/words/format/plain-number'
import { writeNumber } from '@/lib/words/format/write-number'
import { isNumbers } from './read-typed'
import type { Typed } from './typed'

/** A question as it would be typed: the form that `readTyped` reads it from. */
export function typedOfGiven(fields: readonly FieldShape[], given: unknown, locale: string, path = ''): Typed {
  const values = given as Readonly<Record<string, unknown>>
  return Object.assign(
    {},
    ...fields.map(({ name, shape }) =>
      values[name] === undefined || values[name] === null
        ? {}
        : typedOf(shape, values[name], locale, `${path}${name}`, name),
    ),
  ) as Typed
}

function typedOf(shape: Shape, value: unknown, locale: string, at: string, name: string): Typed {
  switch (shape.kind) {
    case 'group':
      return typedOfGiven(shape.fields, value, locale, `${at}.`)
    case 'list':
      return typedOfList(shape.of, value as readonly unknown[], locale, at, name)
    case 'number':
      return { [at]: [inField(name, Number(value), locale)] }
    case 'text':
      return {
        [at]: [
          unitEnding(name) && /^-?\d+(\.\d+)?$/.test(String(value))
            ? String(value).replace('.', markOf(locale))
            : String(value),
        ],
      }
    case 'yes-no':
      return { [at]: [value === true ? 'yes' : 'no'] }
    case 'choice':
      return { [at]: [String(value)] }
    case 'other':
      return { [at]: [JSON.stringify(value)] }
    default:
      return shape satisfies never
  }
}

function typedOfList(of: Shape, values: readonly unknown[], locale: string, at: string, name: string): Typed {
  if (of.kind === 'number') return { [at]: [values.map((value) => inField(name, Number(value), locale)).join(' ')] }
  if (of.kind === 'text') return { [at]: [values.map(String).join('\n')] }
  if (of.kind === 'choice') return { [at]: values.map(String) }
  if (of.kind === 'group')
    return Object.assign(
      {},
      ...values.map((value, row) => typedOfGiven(of.fields, value, locale, `${at}.${row}.`)),
    ) as Typed
  if (isNumbers(of))
    return {
      [at]: [
        (values as readonly (readonly number[])[])
          .map((line) => line.map((value) => inField(name, value, locale)).join(' '))
          .join('\n'),
      ],
    }
  return { [at]: [JSON.stringify(values)] }
}

/** The shortest digits that are this number and no other, without marks for thousands. */
const inField = (name: string, value: number, locale: string) =>
  writeNumber(numberFormOf(locale, { maximumSignificantDigits: 21, useGrouping: false }), toScreenText(name, value))

const markOf = (locale: string) => plainNumber(0.5, { locale }).charAt(1)
