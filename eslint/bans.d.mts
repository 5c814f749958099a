import type { Rule } from 'eslint'

export const bans: Record<string, { files: string[]; except?: string[]; forbids: string; reason: string }>
export const banRules: Record<string, Rule.RuleModule>
