import { forbid } from './forbid.mjs'

/** Files that run outside the app: on a person's own machine, from a command line or in a test. */
const outsideApp = ['lib/ops/**', 'seed/**', 'tests/**', 'eslint/**', '*.config.*']

// The one table of password hashes, however it is reached.
const passwordTable = [
  'MemberExpression[object.name=/^(tx|from|db|prisma|client)$/][property.name="password"]',
  'MemberExpression[object.callee.name="db"][property.name="password"]',
  'Property[key.name=/^(select|include)$/] Property[key.name="password"]',
  'TaggedTemplateExpression[tag.property.name=/^\\$(query|execute)Raw$/] TemplateElement[value.raw=/\\bpassword\\b/i]',
].join(', ')

/** Every ban: where it holds, where not, what it forbids and why. */
export const bans = {
  'no-unsafe-sql': {
    files: ['**/*.{ts,tsx,mjs}'],
    forbids:
      'Identifier[name=/^\\$(query|execute)RawUnsafe$/], MemberExpression[object.name="Prisma"][property.name="raw"]',
    reason:
      'Text put into SQL by hand can carry SQL. Use the tagged forms $queryRaw and $executeRaw, which send values apart.',
  },
  'no-raw-html': {
    files: ['**/*.{ts,tsx}'],
    forbids: 'JSXAttribute[name.name="dangerouslySetInnerHTML"], Property[key.name="dangerouslySetInnerHTML"]',
    reason: 'Whatever somebody typed would run as a script of ours. Give React the parts.',
  },
  'no-shared-cache': {
    files: ['app/**', 'lib/**'],
    except: ['lib/ops/**'],
    forbids: 'ExpressionStatement[directive=/^use cache/], ImportSpecifier[imported.name="unstable_cache"]',
    reason: "A cached answer is served without asking who asks; one bakery could read another's.",
  },
  'no-environment': {
    files: ['**/*.{ts,tsx,mjs}'],
    // The embedded server hands its path on to PostgreSQL's programs, and runs outside the app.
    except: [
      ...outsideApp,
      'lib/db/settings.ts',
      'lib/db/log.ts',
      'lib/db/embedded/server.ts',
      'lib/kitchen/heavy/worker-file.ts',
      'lib/kitchen/stations/front-facts.ts',
      'lib/auth/address-of.ts',
      'lib/auth/auth-secret.ts',
      'lib/auth/link-to.ts',
      'lib/auth/transport-header.ts',
    ],
    forbids:
      'MemberExpression[object.name="process"][property.name="env"], VariableDeclarator[init.name="process"] Property[key.name="env"], ImportDeclaration[source.value=/^(node:)?process$/] ImportSpecifier[imported.name="env"], MemberExpression[object.type="MetaProperty"][property.name="env"]',
    reason:
      'Settings are read and checked in one place (lib/db/settings.ts); read here, a missing one shows only when somebody needs it.',
  },
  'no-password-table': {
    files: ['app/**/*.{ts,tsx}', 'lib/**/*.{ts,tsx}'],
    except: [
      'lib/ops/**',
      'lib/auth/**',
      'lib/kitchen/command.ts',
      'lib/kitchen/people/accept-invitation.ts',
      'lib/kitchen/people/change-own-password.ts',
      'lib/kitchen/people/new-bakery.ts',
      'lib/kitchen/people/sign-in.ts',
    ],
    forbids: passwordTable,
    reason:
      'Password hashes are read and written by lib/auth and by the commands of signing in alone, so that none can slip into a page.',
  },
  'no-clock-or-chance-in-calc': {
    files: ['lib/calc/**/*.ts'],
    forbids: [
      'MemberExpression[object.name="Date"][property.name="now"]',
      'NewExpression[callee.name="Date"][arguments.length=0]',
      'CallExpression[callee.name="Date"]',
      'MemberExpression[object.name="Math"][property.name="random"]',
      'MemberExpression[object.name="performance"]',
      'Identifier[name=/^(process|crypto|fetch|Intl)$/]',
      'MemberExpression[property.name=/^toLocale|^localeCompare$/]',
    ].join(', '),
    reason:
      'A calculation gives the same answer everywhere and always: time, chance and language come in as arguments.',
  },
  'no-chance-outside-arguments': {
    files: ['lib/kitchen/**/*.ts', 'lib/auth/**/*.ts'],
    forbids: 'MemberExpression[object.name="Math"][property.name="random"]',
    reason: 'Chance in a plan comes from its stored seed, and secrets from node:crypto.',
  },
  'no-sleep-in-tests': {
    files: ['tests/**/*.ts'],
    forbids:
      'CallExpression[callee.property.name="waitForTimeout"], ImportDeclaration[source.value="node:timers/promises"]',
    reason: 'A fixed wait is too short on a slow machine and too long on every other. Wait for what you want to see.',
  },
  'no-link-that-fetches': {
    files: ['app/**/*.{ts,tsx}', 'lib/**/*.{ts,tsx}'],
    except: ['lib/ui/page-link.tsx'],
    forbids: 'ImportDeclaration[source.value="next/link"]',
    reason:
      'It fetches pages before anybody asks for them, which would be a use of the session of whoever left the page open. Use PageLink.',
  },
  'no-literal-length': {
    files: ['app/**/*.tsx', 'lib/ui/**/*.tsx'],
    forbids: 'JSXAttribute[name.name=/^(min|max)Length$/] Literal[raw=/^.?\\d/]',
    reason:
      'A length kept beside the schema that judges drifts from it, and cuts what somebody types. Take it from the schema by rulesOf.',
  },
  'no-literal-text-prop': {
    files: ['app/**/*.tsx', 'lib/ui/**/*.tsx', 'lib/station/**/*.tsx'],
    forbids:
      'JSXAttribute[name.name=/^(aria-label|aria-description|aria-roledescription|aria-valuetext|title|alt|placeholder|label|hint|heading|caption|summary)$/] > Literal[value=/\\p{L}/u]',
    reason: 'Words that a person reads are keys in lib/words, so that they can be read in another language.',
  },
}

export const banRules = Object.fromEntries(
  Object.entries(bans).map(([name, { forbids, reason }]) => [name, forbid(forbids, reason)]),
)
