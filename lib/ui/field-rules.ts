/** What a command asks of one field, as a browser can say it before anything is sent. */
export type FieldRule = {
  isRequired: boolean
  /** Characters. */
  mostLength?: number
  least?: number
  most?: number
  /** The bound itself is outside. */
  isAboveLeast?: boolean
  isBelowMost?: boolean
}

/** By the field's name; a number in a name, which counts rows, stands there as `*`. */
export type FieldRules = Readonly<Record<string, FieldRule>>

/** The rule of a field by its name in the form. @example ruleOf(rules, 'content.arms.2.name') // that of 'content.arms.*.name' */
export function ruleOf(rules: FieldRules, name: string): FieldRule | undefined {
  return rules[name.replaceAll(/\.\d+(?=\.|$)/g, '.*')]
}
