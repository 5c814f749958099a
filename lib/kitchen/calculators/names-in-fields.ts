import 'server-only'
import type { FieldShape, Shape } from './shape-of-schema'

/** Names of all fields and values of all choices, however deep, each once. */
export function namesInFields(fields: readonly FieldShape[]): {
  fields: readonly string[]
  choices: readonly string[]
} {
  const [names, choices] = [new Set<string>(), new Set<string>()]
  const look = (shape: Shape): void => {
    if (shape.kind === 'list') look(shape.of)
    if (shape.kind === 'choice') shape.values.forEach((value) => choices.add(String(value)))
    if (shape.kind === 'group') lookAt(shape.fields)
  }
  const lookAt = (some: readonly FieldShape[]) =>
    some.forEach(({ name, shape }) => {
      names.add(name)
      look(shape)
    })
  lookAt(fields)
  return { fields: [...names], choices: [...choices] }
}
