/**
 * A rule that forbids whatever a selector finds. Each ban is a rule of its own, so that it has its own list of
 * files and its own reason; ESLint's one list of forbidden syntax can only be replaced as a whole.
 * @param {string} selector
 * @param {string} reason what goes wrong otherwise, and what to do
 * @returns {import('eslint').Rule.RuleModule}
 */
export function forbid(selector, reason) {
  return {
    meta: { type: 'problem', schema: [], docs: { description: reason } },
    create: (context) => ({ [selector]: (node) => context.report({ node, message: reason }) }),
  }
}
