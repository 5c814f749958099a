import { expect, test } from 'vitest'
import { sourceFilesIn, textOf } from '../../support/source-files'

/** Not for a person to set: the start or npm test sets them for its own children, or the machine has them anyway. */
const notSettings = new Set([
  'EVENDOUGH_FRONT',
  'EVENDOUGH_FRONT_SECRET',
  'EVENDOUGH_LONG',
  'EVENDOUGH_WORKER',
  'NEXTAUTH_SECRET',
  'NEXTAUTH_URL',
  'NODE_ENV',
  'PATH',
])

/** Names read from the environment as `process.env.NAME` or `env.NAME`, and the fields of schemas that it is parsed by. */
function settingsOf(file: string): string[] {
  const text = textOf(file)
  const read = text.matchAll(/\benv\.([A-Z][A-Z\d_]*)/g)
  const parsed = /^(?:const environment|const settingsSchema) = z\.object\(\{\n([\s\S]*?)^\}\)/m.exec(text)?.[1] ?? ''
  return [...read, ...parsed.matchAll(/^ {2}([A-Z][A-Z\d_]*):/gm)].map(([, name = '']) => name)
}

test('.env.example names each setting that the start and the app read, and no other', () => {
  const read = new Set(
    sourceFilesIn('lib')
      .flatMap(settingsOf)
      .filter((name) => !notSettings.has(name)),
  )
  const named = [...textOf('.env.example').matchAll(/^# ([A-Z][A-Z\d_]*)=/gm)].map(([, name]) => name)
  expect(named.toSorted()).toEqual([...read].sort())
})

test('.env.example sets nothing and holds no secret', () => {
  const lines = textOf('.env.example').split('\n').filter(Boolean)
  expect(lines.filter((line) => !line.startsWith('#'))).toEqual([])
  expect(textOf('.gitignore').split('\n')).toContain('.env')
  expect(textOf('.dockerignore').split('\n')).toEqual(expect.arrayContaining(['.data', '.env', '.git', 'node_modules']))
})

test('one least Node.js: bootstrap, package.json, .nvmrc, the container', () => {
  const [, major, minor] = /^const leastNode = \[(\d+), (\d+)\]$/m.exec(textOf('lib/ops/bootstrap.mjs')) ?? []
  const least = `${major}.${minor}`
  expect(least).toMatch(/^\d+\.\d+$/)
  expect((JSON.parse(textOf('package.json')) as { engines: object }).engines).toEqual({ node: `>=${least}` })
  expect(textOf('.nvmrc').trim()).toBe(least)
  expect(textOf('Dockerfile')).toContain(`ARG NODE_VERSION=${least}\n`)
})

test('CHANGELOG.md speaks of the version that package.json has', () => {
  const { version } = JSON.parse(textOf('package.json')) as { version: string }
  expect(textOf('CHANGELOG.md')).toMatch(new RegExp(`^## ${version.replaceAll('.', '\\.')}\\b`, 'm'))
})
