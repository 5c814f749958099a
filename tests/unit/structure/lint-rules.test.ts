import path from 'node:path'
import { ESLint, Linter } from 'eslint'
import tseslint from 'typescript-eslint'
import { describe, expect, test } from 'vitest'
import { banRules, bans } from '../../../eslint/bans.mjs'
import { importDirections } from '../../../eslint/import-directions.mjs'

const root = path.resolve(import.meta.dirname, '..', '..', '..')
const everyRule = { ...banRules, 'import-directions': importDirections }

/** Names of our rules that report a piece of code, as if it stood in the file. */
function reportedIn(file: string, code: string): string[] {
  const linter = new Linter({ cwd: root })
  const config = [
    {
      files: ['**/*.{ts,tsx}'],
      plugins: { evendough: { rules: everyRule } },
      languageOptions: {
        parser: tseslint.parser as Linter.Parser,
        parserOptions: { ecmaFeatures: { jsx: file.endsWith('x') } },
      },
      rules: { 'evendough/import-directions': 'error' as const },
    },
    ...Object.entries(bans).map(([name, { files, except = [] }]) => ({
      files,
      ignores: except,
      rules: { [`evendough/${name}`]: 'error' as const },
    })),
  ]
  const found = linter
    .verify(code, config, path.join(root, file))
    .map(({ ruleId, message }) => ruleId?.replace('evendough/', '') ?? message)
  return [...new Set(found)]
}

describe('imports go one way', () => {
  test.each([
    ['app/page.tsx', '@/lib/db/client'],
    ['app/page.tsx', '@/lib/calc/error'],
    ['app/page.tsx', '@/lib/ops/build'],
    ['lib/kitchen/people/sign-in.ts', '../../ui/button'],
    ['lib/kitchen/people/sign-in.ts', '@/app/act'],
    ['lib/auth/actor.ts', '../kitchen/refusal'],
    ['lib/ui/field.tsx', '../db/client'],
    ['lib/ui/field.tsx', '../kitchen/refusal'],
    ['lib/calc/dosing/product-mass.ts', '../../words/say'],
    ['lib/calc/dosing/product-mass.ts', 'node:fs'],
    ['lib/calc/dosing/product-mass.ts', 'zod'],
    ['lib/words/say.ts', '../calc/error'],
    ['lib/db/client.ts', '../auth/actor'],
    ['lib/documents/plan/read-plan.ts', '../../db/generated/enums'],
    ['lib/documents/plan/read-plan.ts', '../../kitchen/trials/plan-types'],
    ['lib/documents/plan/read-plan.ts', '../../calc/weighing/types'],
    ['lib/documents/plan/read-plan.ts', 'decimal.js'],
    ['lib/kitchen/people/sign-in.input.ts', './sign-in'],
    ['lib/kitchen/trials/get-plan.ts', '../readings/current-readings'],
    ['lib/kitchen/readings/log-reading.ts', '../shifts/get-batch'],
    ['lib/kitchen/stores/price-on.ts', '../formulas/rules'],
    ['lib/kitchen/pantry/add-shelf.ts', '../stores/price-on'],
    ['seed/stores.ts', '../lib/ops/secrets'],
    ['lib/kitchen/people/sign-in.input.ts', '../../db/client'],
    ['lib/kitchen/people/sign-in.input.ts', 'server-only'],
  ])('%s may not import %s', (file, wanted) => {
    expect(reportedIn(file, `import { a } from '${wanted}'`)).toEqual(['import-directions'])
    expect(reportedIn(file, `export * from '${wanted}'`)).toEqual(['import-directions'])
    expect(reportedIn(file, `import type { A } from '${wanted}'`)).toEqual(['import-directions'])
    expect(reportedIn(file, `const a = await import('${wanted}')`)).toEqual(['import-directions'])
    expect(reportedIn(file, `type A = import('${wanted}').A`)).toEqual(['import-directions'])
  })

  test.each([
    ['app/page.tsx', '@/lib/kitchen/people/sign-in'],
    ['app/page.tsx', 'next/navigation'],
    ['lib/kitchen/people/sign-in.ts', '../../db/client'],
    ['lib/kitchen/trials/get-plan.ts', '../../documents/plan/read-plan'],
    ['lib/kitchen/readings/import/read-rows.ts', '../../batches/lock-batch'],
    ['lib/kitchen/heavy/works.ts', '../results/analyse-trial'],
    ['lib/kitchen/decisions/get-decision.ts', '../results/analyse-once'],
    ['lib/kitchen/decisions/get-decision.ts', '../query'],
    ['lib/db/append-audit.ts', '../documents/audit-entry/text-of-audit-entry'],
    ['lib/documents/plan/read-plan.ts', 'zod'],
    ['lib/ui/field.tsx', '../kitchen/people/sign-in.input'],
    ['lib/calc/dosing/product-mass.ts', '../error'],
    ['lib/calc/dosing/product-mass.ts', 'decimal.js'],
    ['lib/calc/dosing/entries.ts', 'zod'],
    ['lib/kitchen/people/sign-in.input.ts', 'zod'],
    ['lib/kitchen/people/sign-in.input.ts', '../text.input'],
    ['lib/ops/build.ts', '../db/client'],
    ['tests/unit/a.test.ts', '../../lib/calc/error'],
  ])('%s may import %s', (file, wanted) => {
    expect(reportedIn(file, `import { a } from '${wanted}'`)).toEqual([])
  })
})

describe('what is banned is reported where it is banned', () => {
  const page = 'app/page.tsx'
  const command = 'lib/kitchen/people/get-person.ts'
  const calculation = 'lib/calc/dosing/product-mass.ts'
  const bitten: [string, string, string][] = [
    ['no-unsafe-sql', command, 'tx.$queryRawUnsafe(text)'],
    ['no-unsafe-sql', 'lib/ops/backup.ts', 'const { $executeRawUnsafe } = tx'],
    ['no-unsafe-sql', command, 'tx.$queryRaw`${Prisma.raw(text)}`'],
    ['no-raw-html', page, '<p dangerouslySetInnerHTML={{ __html: text }} />'],
    ['no-raw-html', page, 'const props = { dangerouslySetInnerHTML: { __html: text } }'],
    ['no-shared-cache', page, 'async function read() { "use cache"; return 1 }'],
    ['no-shared-cache', page, '"use cache: remote"'],
    ['no-shared-cache', page, 'import { unstable_cache } from "next/cache"'],
    ['no-environment', page, 'process.env.PORT'],
    ['no-environment', command, 'const { env } = process'],
    ['no-environment', command, 'import { env } from "node:process"'],
    ['no-password-table', command, 'tx.password.findMany()'],
    ['no-password-table', command, 'db().password.findMany()'],
    ['no-password-table', command, 'tx.person.findMany({ select: { password: { select: { hash: true } } } })'],
    ['no-password-table', command, 'tx.$queryRaw`SELECT hash FROM password`'],
    ['no-clock-or-chance-in-calc', calculation, 'Date.now()'],
    ['no-clock-or-chance-in-calc', calculation, 'new Date()'],
    ['no-clock-or-chance-in-calc', calculation, 'Math.random()'],
    ['no-clock-or-chance-in-calc', calculation, 'mass.toLocaleString()'],
    ['no-clock-or-chance-in-calc', calculation, 'new Intl.NumberFormat()'],
    ['no-chance-outside-arguments', command, 'Math.random()'],
    ['no-sleep-in-tests', 'tests/browser/door.test.ts', 'await page.waitForTimeout(100)'],
    ['no-link-that-fetches', page, "import Link from 'next/link'"],
    ['no-literal-length', page, '<Field maxLength={40} />'],
    ['no-literal-length', page, '<input maxLength="40" />'],
    ['no-literal-length', page, '<Field maxLength={rule?.mostLength ?? 40} />'],
    ['no-literal-text-prop', page, '<nav aria-label="Pages" />'],
  ]
  test.each(bitten)('%s in %s: %s', (rule, file, code) => {
    expect(reportedIn(file, code)).toEqual([rule])
  })

  test.each([
    [command, 'tx.$queryRaw`SELECT 1 WHERE ${id}`'],
    ['lib/auth/sessions.ts', 'tx.password.findUnique({})'],
    ['lib/db/settings.ts', 'process.env.PORT'],
    [calculation, 'new Date(atMs)'],
    [page, '<nav aria-label={say("pages")} />'],
    [page, '<Field maxLength={ruleOf(rules, "value")?.mostLength} />'],
    [command, 'mustBeGoodPassword(input.password)'],
  ])('nothing in %s: %s', (file, code) => {
    expect(reportedIn(file, code)).toEqual([])
  })

  test('every ban is among these', () => {
    expect([...new Set(bitten.map(([name]) => name))].sort()).toEqual(Object.keys(bans).sort())
  })
})

describe('that a value is there is looked at, not claimed', () => {
  const rule = '@typescript-eslint/no-non-null-assertion'
  const config = async (file: string) => {
    const { rules } = (await new ESLint({ cwd: root }).calculateConfigForFile(file)) as { rules: Linter.RulesRecord }
    return rules[rule]
  }
  test.each([
    'app/act.ts',
    'lib/kitchen/query.ts',
    'lib/ui/field.tsx',
    'lib/db/client.ts',
    'lib/ops/calc.ts',
    'seed/people.ts',
  ])('in %s', async (file) => expect(await config(file)).toEqual([2]))
  // A loop over a matrix stays within its bounds, and a test fails where it is wrong.
  test.each(['lib/calc/analysis/fit-additive.ts', 'tests/unit/kitchen/sure-of.test.ts'])(
    'but not in %s',
    async (file) => expect(await config(file)).toEqual([0]),
  )
})
