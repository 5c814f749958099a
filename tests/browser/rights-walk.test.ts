import type { Right } from '../../lib/auth/rights'
import { builtRoutes } from '../../lib/ops/built-routes'
import { expect, test, cookieOf } from '../support/app'
import { makeBakery, type TestBakery, type TestPerson } from '../support/bakery'
import { builtActions, callAction } from '../support/call-action'
import type { PageWalk, WalkRole } from '../support/rights-walk'
import { useCasesOnDisk } from '../support/use-cases'
import { everyAction, everyPage } from '../support/walks/all'
import { levelByHand } from '../support/who-may'

/** Reached otherwise than by an action or a page of the walk, each with a test of its own. */
const actionsElsewhere = [
  'app/(door)/set-up/[secret]/actions.ts#setUp',
  // Shows a page again, and calls nothing: tests/browser/live.test.ts.
  'app/(desk)/look-again.ts#lookAgain',
]
const routesElsewhere = [
  '/',
  '/icon.svg',
  '/sign-out',
  '/api/auth/[...nextauth]',
  // Says that something has changed, and nothing of it: tests/browser/live.test.ts.
  '/api/live',
  '/api/v1/entries',
  // tests/browser/photos-over-http.test.ts.
  '/api/v1/photos',
  '/api/v1/photos/[photoId]',
  '/api/v1/photos/[photoId]/pieces/[number]',
  // Of tablets: tests/browser/station*.test.ts.
  '/api/v1/station',
  '/api/v1/station/bake-again',
  '/api/v1/station/begin',
  '/api/v1/station/enrol',
  '/api/v1/station/exchange',
  '/api/v1/station/floor',
  '/api/v1/station/go-on',
  '/api/v1/station/live',
  '/api/v1/station/log-off',
  '/api/v1/station/lacking',
  '/api/v1/station/log-on',
  '/api/v1/station/move',
  '/api/v1/station/open-weights',
  '/api/v1/station/show-badge',
  '/api/v1/station/take-back',
  '/api/v1/station/weights',
  '/station',
  '/station/app.webmanifest',
  '/station/files/[name]',
  '/station-worker.js',
  '/stores/find-ingredients',
  '/trials/[trialId]/check/file',
]
const useCasesElsewhere = [
  'people.find-owners',
  'people.make-owner-link',
  'people.set-up-bakery',
  'people.sign-in',
  'people.sign-out',
  'intake.take-entries',
  'key.note-look',
  'photos.get-photo',
  'photos.send-photo',
  'photos.send-photo-piece',
  'readings.log-reading',
  'readings.correct-reading',
  'stores.find-ingredients',
  'evidence.get-file',
  // A tablet calls these, with a credential of its own; every-caller.test.ts walks them.
  'intake.list-lacking',
  'stations.enrol-station',
  'stations.get-floor',
  'stations.get-station',
  'stations.get-weigh-list',
  'stations.go-on',
  'stations.log-off',
  'stations.log-on',
  'stations.show-badge',
]

type Who = {
  label: string
  role: WalkRole | null
  person(bakery: TestBakery, neighbour: TestBakery): TestPerson | null
  isNeighbour?: true
}

const everybody: readonly Who[] = [
  { label: 'a stranger', role: null, person: () => null },
  { label: 'a shift baker', role: 'shift_baker', person: (bakery) => bakery.early },
  { label: 'the head baker', role: 'head_baker', person: (bakery) => bakery.head },
  { label: 'the owner', role: 'owner', person: (bakery) => bakery.owner },
  {
    label: 'the owner of the bakery next door',
    role: 'owner',
    person: (_, neighbour) => neighbour.owner,
    isNeighbour: true,
  },
]

async function cookieHeader(person: TestPerson | null, url: string): Promise<string | null> {
  if (!person) return null
  const { name, value } = await cookieOf(person.sessionSecret, url)
  return `${name}=${value}`
}

test('the walk knows every action, route, command and query there is', async () => {
  expect([...everyAction.map((entry) => entry.action), ...actionsElsewhere].sort()).toEqual(
    [...builtActions().keys()].sort(),
  )
  expect([...everyPage.map((entry) => entry.route), ...routesElsewhere].sort()).toEqual(builtRoutes().sort())
  const walked = [
    ...everyAction.map((entry) => entry.command),
    ...everyPage.flatMap((entry) => entry.queries),
    ...useCasesElsewhere,
  ]
  expect([...new Set(walked)].sort()).toEqual((await useCasesOnDisk()).map(({ name }) => name).sort())
})

for (const walk of everyAction) {
  for (const who of everybody) {
    test(`${walk.command} by ${walk.action.split('#')[1]} as ${who.label}`, async ({ app }) => {
      const [bakery, neighbour] = [
        await makeBakery('Planted Crust', new Date()),
        await makeBakery('Next Door', new Date()),
      ]
      const { page, bound, fields, happened } = await walk.aim({ bakery, neighbour, look: app.look })
      const person = who.person(bakery, neighbour)
      const typed = Object.fromEntries(
        Object.entries(fields).map(([name, value]) => [name, value === '{own}' ? (person?.password ?? '') : value]),
      )
      const request = {
        url: app.url,
        page,
        action: walk.action,
        bound,
        fields: typed,
        cookie: await cookieHeader(person, app.url),
      }

      const crossSite = await callAction({ ...request, headers: { Origin: 'https://elsewhere.example' } })
      await crossSite.text()
      expect(await happened(), 'sent from another site').toBe(false)

      const response = await callAction(request)
      const body = await response.text()
      const may =
        walk.right === 'open' ||
        (who.role !== null &&
          !who.isNeighbour &&
          mayAtDesk(who.role, walk.right) &&
          !walk.narrowedFor?.includes(who.role))
      expect(response.status, body.slice(0, 500)).toBeLessThan(500)
      expect(await happened(), body.slice(0, 800)).toBe(may)
    })
  }
}

for (const walk of everyPage) {
  for (const who of everybody) {
    test(`${walk.route} as ${who.label}`, async ({ app }) => {
      const [bakery, neighbour] = [
        await makeBakery('Planted Crust', new Date()),
        await makeBakery('Next Door', new Date()),
      ]
      const address = await walk.address({ bakery, neighbour, look: app.look })
      const cookie = await cookieHeader(who.person(bakery, neighbour), app.url)
      const response = await fetch(`${app.url}${address}`, {
        redirect: 'manual',
        headers: cookie ? { Cookie: cookie } : {},
      })
      const body = await response.text()
      expect(response.status, body.slice(0, 300)).toBe(expectedStatus(walk, who))
      if (who.isNeighbour && walk.right !== 'open') expect(body).not.toContain('Planted Crust')
      expect(response.headers.get('content-security-policy')).toContain("script-src 'self' 'nonce-")
      expect(response.headers.get('content-security-policy')).not.toContain('unsafe')
      expect(response.headers.get('cache-control')).toContain('no-store')
      expect(response.headers.get('x-content-type-options')).toBe('nosniff')
      expect(response.headers.get('x-powered-by')).toBeNull()
      if (walk.named && who.role && !who.isNeighbour) {
        const otherId = address.replace(/[0-9a-f]{8}-[0-9a-f-]{27}/, '00000000-0000-7000-8000-000000000000')
        const nothing = await fetch(`${app.url}${otherId}`, {
          redirect: 'manual',
          headers: cookie ? { Cookie: cookie } : {},
        })
        expect(nothing.status).toBe(walk.right === 'open' || mayAtDesk(who.role, walk.right) ? 404 : 403)
      }
    })
  }
}

/** By the table that was written by hand, not by the one that is walked. */
function mayAtDesk(role: WalkRole, right: Right): boolean {
  return levelByHand(`desk ${role}`, right) !== 'no'
}

function expectedStatus(walk: PageWalk, who: Who): number {
  if (walk.right === 'open') return 200
  if (who.role === null) return 307
  if (!mayAtDesk(who.role, walk.right)) return 403
  return walk.named && who.isNeighbour ? 404 : 200
}
