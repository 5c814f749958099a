import 'server-only'
import { z } from 'zod'
import { typedPassword } from '../kitchen/text.input'
import type { FieldRule, FieldRules } from './field-rules'

type Shape = z.core.JSONSchema.JSONSchema

const known = new WeakMap<z.ZodType, FieldRules>()

/**
 * What a command's input asks of each field, out of the schema by which it judges: so that a form says the same before it is
 * sent, and nobody keeps a second list. The password that confirms a command is in every one, and is of no schema.
 */
export function rulesOf(schema: z.ZodType): FieldRules {
  const held = known.get(schema)
  if (held) return held
  const rules: Record<string, FieldRule> = {}
  collect(shapeOf(typedPassword), 'password', true, rules)
  collect(shapeOf(schema), '', true, rules)
  known.set(schema, rules)
  return rules
}

function shapeOf(schema: z.ZodType): Shape {
  return z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any', reused: 'inline' })
}

function collect(shape: Shape, at: string, isAsked: boolean, rules: Record<string, FieldRule>): void {
  const within = (name: string) => (at === '' ? name : `${at}.${name}`)
  const choices = shape.anyOf ?? shape.oneOf
  if (choices) {
    const others = choices.filter((choice): choice is Shape => typeof choice === 'object' && choice.type !== 'null')
    // Of several kinds of input each has its own fields, and only what all of them ask for is asked of everybody.
    for (const other of others) collect(other, at, isAsked && others.length === choices.length, rules)
    return
  }
  if (shape.type === 'object') {
    for (const [name, part] of Object.entries(shape.properties ?? {}))
      if (typeof part === 'object')
        collect(part, within(name), isAsked && (shape.required?.includes(name) ?? false), rules)
    // Parts by names out of a list, of which none need be there.
    if (typeof shape.additionalProperties === 'object')
      for (const name of namesIn(shape.propertyNames)) collect(shape.additionalProperties, within(name), false, rules)
    return
  }
  if (shape.type === 'array') {
    if (shape.items && typeof shape.items === 'object' && !Array.isArray(shape.items))
      collect(shape.items, within('*'), true, rules)
    return
  }
  if (at === '') return
  const rule = ruleOfShape(shape, isAsked)
  const before = rules[at]
  rules[at] = before ? { ...before, ...rule, isRequired: before.isRequired && rule.isRequired } : rule
}

function namesIn(names: Shape['propertyNames']): string[] {
  return typeof names === 'object' ? (names.enum ?? []).map(String) : []
}

function ruleOfShape(shape: Shape, isAsked: boolean): FieldRule {
  const isText = shape.type === 'string'
  // A text that is asked for may still be empty, where its schema has no least length, form or list.
  const isRequired =
    isAsked &&
    shape.default === undefined &&
    (isText
      ? (shape.minLength ?? 0) > 0 || shape.format !== undefined || shape.enum !== undefined
      : shape.type === 'number' || shape.type === 'integer')
  const least = shape.exclusiveMinimum ?? shape.minimum
  const most = shape.exclusiveMaximum ?? shape.maximum
  return {
    isRequired,
    ...(isText && shape.maxLength !== undefined ? { mostLength: shape.maxLength } : {}),
    ...(isBound(least) ? { least, isAboveLeast: shape.exclusiveMinimum !== undefined } : {}),
    ...(isBound(most) ? { most, isBelowMost: shape.exclusiveMaximum !== undefined } : {}),
  }
}

/** Not the ends of what a number can hold, which the schema names where nobody set a bound. */
function isBound(bound: number | boolean | undefined): bound is number {
  return typeof bound === 'number' && Math.abs(bound) < Number.MAX_SAFE_INTEGER
}
