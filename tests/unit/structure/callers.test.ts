import { expect, test } from 'vitest'
import { importsOf, sourceFilesIn, textOf } from '../../support/source-files'

const routes = [...sourceFilesIn('app'), 'proxy.ts']

test('no route speaks as a job, or calls what only the machine may: a request could', () => {
  expect(routes.filter((file) => /kind:\s*['"`]job/.test(textOf(file)))).toEqual([])
  const ofMachine = ['lib/kitchen/people/find-owners', 'lib/kitchen/people/make-owner-link']
  expect(routes.filter((file) => importsOf(file).some((wanted) => ofMachine.includes(wanted)))).toEqual([])
})

test('what a caller is comes from one place for all pages and forms, and from the sign-in', () => {
  const makers = routes.filter((file) => /kind: 'desk'/.test(textOf(file)))
  expect(makers).toEqual(['app/api/auth/[...nextauth]/route.ts', 'app/caller.ts'])
})
