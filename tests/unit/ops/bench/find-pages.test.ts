import { expect, test } from 'vitest'
import { findPages, routeOf } from '../../../../lib/ops/bench/find-pages'

const routes = ['/trials', '/trials/new', '/trials/[trialId]', '/trials/[trialId]/result', '/stores']

test.each([
  ['/trials', '/trials'],
  ['/trials/new', '/trials/new'],
  ['/trials/7?day=2#top', '/trials/[trialId]'],
  ['/trials/7/result', '/trials/[trialId]/result'],
  ['/trials/', undefined],
  ['/trials/7/other', undefined],
  ['/', undefined],
])('%s is a page of the route %s', (address, route) => {
  expect(routeOf(address, routes)).toBe(route)
})

/** Pages that link to each other, as a function that opens them and keeps what was opened. */
function site(pages: Record<string, string[]>) {
  const opened: string[] = []
  const open = async (address: string) => {
    opened.push(address)
    return pages[address]?.map((href) => `<a class="x" href="${href}">there</a>`).join('') ?? null
  }
  return { opened, open }
}

test('every route is found by the links that lead to it, each address opened once', async () => {
  const { open, opened } = site({
    '/trials': ['/trials/1', '/stores', 'https://elsewhere.example/trials/9', '/sign-out'],
    '/trials/new': [],
    '/stores': ['/trials', '/trials/1#head'],
    '/trials/1': ['/trials/1/result?a=1&amp;b=2'],
    '/trials/1/result?a=1&b=2': ['/trials'],
  })
  expect(await findPages(routes, open)).toEqual([
    { route: '/trials', address: '/trials' },
    { route: '/trials/new', address: '/trials/new' },
    { route: '/trials/[trialId]', address: '/trials/1' },
    { route: '/trials/[trialId]/result', address: '/trials/1/result?a=1&b=2' },
    { route: '/stores', address: '/stores' },
  ])
  expect(new Set(opened).size).toBe(opened.length)
})

test('of several pages of one route the longest stands for it, and what does not open is left out', async () => {
  const { open } = site({
    '/trials': ['/trials/1', '/trials/2', '/trials/3'],
    '/trials/1': [],
    '/trials/2': ['/trials', '/trials'],
  })
  expect(await findPages(routes, open)).toEqual([
    { route: '/trials', address: '/trials' },
    { route: '/trials/[trialId]', address: '/trials/2' },
  ])
})

test('a long list is not opened to its end', async () => {
  const { open, opened } = site({ '/trials': Array.from({ length: 400 }, (_, i) => `/trials/${i}`) })
  await findPages(routes, open)
  expect(opened.length).toBeLessThan(20)
})
