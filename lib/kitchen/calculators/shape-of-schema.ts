import 'server-only'
import { z } from 'zod'

/** What a value is, as far as a form or a page must know. `other` is whatever has no field of its own, and is written as JSON. */
export type Shape =
  | { kind: 'number'; isWhole: boolean }
  | { kind: 'text' }
  | { kind: 'yes-no' }
  | { kind: 'choice'; values: readonly (string | number)[] }
  | { kind: 'list'; of: Shape }
  | { kind: 'group'; fields: readonly FieldShape[] }
  | { kind: 'other' }

export type FieldShape = { name: string; shape: Shape; isOptional: boolean; isNullable: boolean }

type Part = Extract<z.core.JSONSchema.BaseSchema, object>
const whole: Shape = { kind: 'number', isWhole: true }
const other: Shape = { kind: 'other' }

/**
 * The fields of a calculation's question or answer. Of an answer that has several forms, the fields of all of them,
 * those that are not in every form as optional.
 * @param io `input` for what may be given, `output` for what comes out
 * @returns none when it is no object
 */
export function fieldsOfSchema(schema: z.ZodType, io: 'input' | 'output'): readonly FieldShape[] {
  const { shape } = shapeOf(z.toJSONSchema(schema, { io, unrepresentable: 'any' }))
  return shape.kind === 'group' ? shape.fields : []
}

function shapeOf(part: z.core.JSONSchema._JSONSchema): { shape: Shape; isNullable: boolean } {
  if (typeof part === 'boolean') return { shape: other, isNullable: false }
  const types: unknown = part.type
  const forms =
    part.anyOf ??
    part.oneOf ??
    (Array.isArray(types) ? types.map((type: Part['type']) => ({ ...part, type })) : undefined)
  if (!forms) return { shape: shapeOfOne(part), isNullable: part.type === 'null' }
  const read = forms.map(shapeOf)
  const shapes = read.filter(({ isNullable }, i) => !(isNullable && isNullForm(forms[i]))).map(({ shape }) => shape)
  return {
    shape: shapes.length === 0 ? other : shapes.reduce(merged),
    isNullable: read.some(({ isNullable }) => isNullable),
  }
}

const isNullForm = (form: z.core.JSONSchema._JSONSchema | undefined) => typeof form === 'object' && form.type === 'null'

function shapeOfOne(part: Part): Shape {
  const values = part.enum ?? (part.const === undefined ? undefined : [part.const])
  if (values?.every((value) => typeof value === 'boolean')) return { kind: 'yes-no' }
  if (values)
    return values.every((value) => typeof value === 'string' || typeof value === 'number')
      ? { kind: 'choice', values }
      : other
  switch (part.type) {
    case 'number':
      return { kind: 'number', isWhole: false }
    case 'integer':
      return whole
    case 'string':
      return { kind: 'text' }
    case 'boolean':
      return { kind: 'yes-no' }
    case 'array':
      return part.items === undefined || Array.isArray(part.items) || part.prefixItems
        ? other
        : { kind: 'list', of: shapeOf(part.items).shape }
    case 'object':
      return part.properties && Object.keys(part.properties).length > 0 ? groupOf(part, part.properties) : other
    default:
      return other
  }
}

function groupOf(part: Part, properties: NonNullable<Part['properties']>): Shape {
  return {
    kind: 'group',
    fields: Object.entries(properties).map(([name, property]) => ({
      name,
      isOptional: !part.required?.includes(name),
      ...shapeOf(property),
    })),
  }
}

/** One shape for what may be either. */
function merged(a: Shape, b: Shape): Shape {
  if (a.kind === 'choice' && b.kind === 'choice')
    return { kind: 'choice', values: [...new Set([...a.values, ...b.values])] }
  if (a.kind === 'list' && b.kind === 'list') return { kind: 'list', of: merged(a.of, b.of) }
  if (a.kind === 'number' && b.kind === 'number') return { kind: 'number', isWhole: a.isWhole && b.isWhole }
  if (a.kind === 'group' && b.kind === 'group') return { kind: 'group', fields: mergedFields(a.fields, b.fields) }
  return a.kind === b.kind ? a : other
}

function mergedFields(a: readonly FieldShape[], b: readonly FieldShape[]): FieldShape[] {
  const alike = (fields: readonly FieldShape[], { name }: FieldShape) => fields.find((field) => field.name === name)
  const ofFirst = a.map((one) => {
    const two = alike(b, one)
    if (!two) return { ...one, isOptional: true }
    return {
      name: one.name,
      shape: merged(one.shape, two.shape),
      isOptional: one.isOptional || two.isOptional,
      isNullable: one.isNullable || two.isNullable,
    }
  })
  const ofSecond = b.filter((two) => !alike(a, two)).map((two) => ({ ...two, isOptional: true }))
  return [...ofFirst, ...ofSecond]
}
