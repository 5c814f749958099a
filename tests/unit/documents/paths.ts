type Node = { [key: string]: unknown }
const isNode = (value: unknown): value is Node => typeof value === 'object' && value !== null && !Array.isArray(value)

/** Fields whose content is open: each warning and each action says what it has to say. */
const open = /(^|\.)(facts|before|after)(\.|$)/

/** Every field of a value, `arms[].lines[].kind`, those of what is open left out. */
export function pathsOfValue(value: unknown, at = ''): string[] {
  if (Array.isArray(value)) return value.flatMap((each) => pathsOfValue(each, `${at}[]`))
  if (!isNode(value) || open.test(at)) return []
  return Object.entries(value).flatMap(([key, each]) => [inside(at, key), ...pathsOfValue(each, inside(at, key))])
}

/** Every field of a JSON Schema, in the same words. */
export function pathsOfSchema(schema: unknown, at = ''): string[] {
  if (!isNode(schema) || open.test(at)) return []
  const branches = [schema.anyOf, schema.oneOf].flatMap((some) => (Array.isArray(some) ? some : []))
  const properties = isNode(schema.properties) ? Object.entries(schema.properties) : []
  return [
    ...new Set([
      ...branches.flatMap((branch) => pathsOfSchema(branch, at)),
      ...pathsOfSchema(schema.items, `${at}[]`),
      ...properties.flatMap(([key, each]) => [inside(at, key), ...pathsOfSchema(each, inside(at, key))]),
    ]),
  ]
}

/** The value with a key more in one object of each kind. */
export function withStrayKeys(value: unknown): { at: string; value: unknown }[] {
  return nodesOf(value).map(({ at, steps }) => ({
    at: `${at}.stray`,
    value: changed(value, steps, (node) => ({ ...node, stray: 1 })),
  }))
}

/** The value with a key less in one object of each kind. */
export function withoutKeys(value: unknown): { at: string; value: unknown }[] {
  return nodesOf(value).flatMap(({ at, steps, node }) =>
    Object.keys(node).map((key) => ({
      at: inside(at, key),
      value: changed(value, steps, (all) => Object.fromEntries(Object.entries(all).filter(([name]) => name !== key))),
    })),
  )
}

/** One object of each kind: the first at each path, for each set of keys. */
function nodesOf(value: unknown): { at: string; steps: (string | number)[]; node: Node }[] {
  const found = new Map<string, { at: string; steps: (string | number)[]; node: Node }>()
  const walk = (each: unknown, at: string, steps: (string | number)[]): void => {
    if (Array.isArray(each)) for (const [i, item] of each.entries()) walk(item, `${at}[]`, [...steps, i])
    if (!isNode(each) || open.test(at)) return
    const kind = `${at} ${Object.keys(each).sort().join()}`
    if (!found.has(kind)) found.set(kind, { at, steps, node: each })
    for (const [key, item] of Object.entries(each)) walk(item, inside(at, key), [...steps, key])
  }
  walk(value, '', [])
  return [...found.values()]
}

function changed(value: unknown, [step, ...rest]: (string | number)[], change: (node: Node) => Node): unknown {
  if (step === undefined) return isNode(value) ? change(value) : value
  if (Array.isArray(value)) return value.map((each: unknown, i) => (i === step ? changed(each, rest, change) : each))
  return isNode(value) ? { ...value, [step]: changed(value[step], rest, change) } : value
}

function inside(at: string, key: string): string {
  return at === '' ? key : `${at}.${key}`
}
