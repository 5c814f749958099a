import type { Rule } from 'eslint'

export const importDirections: Rule.RuleModule
