import next from '@next/eslint-plugin-next'
import a11y from 'eslint-plugin-jsx-a11y'
import react from 'eslint-plugin-react'
import hooks from 'eslint-plugin-react-hooks'
import tseslint from 'typescript-eslint'
import { banRules, bans } from './eslint/bans.mjs'
import { importDirections } from './eslint/import-directions.mjs'

const typed = ['**/*.{ts,tsx}']
const screens = ['app/**/*.tsx', 'lib/ui/**/*.tsx', 'lib/station/**/*.tsx']

export default tseslint.config(
  {
    ignores: [
      '**/node_modules/',
      '.next/',
      '.data/',
      '.test/',
      'coverage/',
      'lib/db/generated/',
      'next-env.d.ts',
      'public/',
    ],
  },
  { linterOptions: { reportUnusedDisableDirectives: 'error', reportUnusedInlineConfigs: 'error' } },
  {
    files: typed,
    extends: [tseslint.configs.strictTypeChecked],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports' }],
      '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
      '@typescript-eslint/no-unused-vars': [
        'error',
        { argsIgnorePattern: '^_', varsIgnorePattern: '^_', caughtErrors: 'all' },
      ],
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      // `() => close()` reads well, and what is thrown away is nothing.
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
      // Guards against what the types rule out are wanted: rights fail closed, and data comes from outside.
      '@typescript-eslint/no-unnecessary-condition': 'off',
      // No enum of TypeScript and hardly a class is in the tree; looking for them took a fifth of lint.
      '@typescript-eslint/no-unsafe-enum-assignment': 'off',
      '@typescript-eslint/no-unsafe-class-instance-assignment': 'off',
      // Types of ours name methods for what plain objects of functions hold; no `this` can get lost there.
      '@typescript-eslint/unbound-method': 'off',
      // An async function without await still turns what it throws into a rejection; interfaces ask for that.
      '@typescript-eslint/require-await': 'off',
    },
  },
  {
    files: ['lib/calc/**', 'tests/**'],
    // With noUncheckedIndexedAccess there is no other way to say that a loop over a matrix stays within its bounds.
    rules: { '@typescript-eslint/no-non-null-assertion': 'off' },
  },
  {
    files: ['tests/**/*.ts'],
    // Matchers such as expect.any() are of type any.
    rules: { '@typescript-eslint/no-unsafe-assignment': 'off', '@typescript-eslint/no-unsafe-return': 'off' },
  },
  {
    files: ['**/*.{ts,tsx,mjs}'],
    rules: { eqeqeq: 'error', 'no-console': 'off', 'no-empty': ['error', { allowEmptyCatch: false }] },
  },
  {
    files: ['app/**', 'lib/**'],
    ignores: ['lib/ops/**'],
    // What a person should know goes through lib/db/log.ts, as one line of JSON that can be searched.
    rules: { 'no-console': 'error' },
  },
  {
    files: screens,
    plugins: { react, 'react-hooks': hooks, 'jsx-a11y': a11y, '@next/next': next },
    settings: { react: { version: 'detect' } },
    languageOptions: { parserOptions: { ecmaFeatures: { jsx: true } } },
    rules: {
      ...react.configs.flat.recommended.rules,
      ...react.configs.flat['jsx-runtime'].rules,
      ...hooks.configs.flat.recommended.rules,
      ...a11y.flatConfigs.strict.rules,
      ...next.configs.recommended.rules,
      ...next.configs['core-web-vitals'].rules,
      // TypeScript checks props.
      'react/prop-types': 'off',
      // Words are keys in lib/words. Signs that are the same in every language may stand as they are.
      'react/jsx-no-literals': [
        'error',
        {
          noStrings: true,
          ignoreProps: true,
          allowedStrings: ['·', '×', '–', '—', '…', '/', ':', '%', '±', ', ', ' '],
        },
      ],
    },
  },
  {
    plugins: { evendough: { rules: { ...banRules, 'import-directions': importDirections } } },
    files: ['**/*.{ts,tsx,mjs}'],
    rules: { 'evendough/import-directions': 'error' },
  },
  ...Object.entries(bans).map(([name, { files, except = [] }]) => ({
    files,
    ignores: except,
    rules: { [`evendough/${name}`]: 'error' },
  })),
)
