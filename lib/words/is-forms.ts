import type { Forms } from './text'

const forms = new Set<string>(['zero', 'one', 'two', 'few', 'many', 'other'] satisfies Intl.LDMLPluralRule[])

/** Whether a branch of a tree of texts is the forms of one text by number, and not a group of texts. */
export function isForms(branch: object): branch is Forms {
  return 'other' in branch && typeof branch.other === 'string' && Object.keys(branch).every((key) => forms.has(key))
}
