import { randomBytes } from 'node:crypto'
import { test as base, expect, type Browser, type BrowserContext, type Page } from 'playwright/test'
import pg from 'pg'
import { makeSessionToken, sessionCookie } from '../../lib/auth/sign-in-cookie'
import { closeDb } from '../../lib/db/client'
import { appRole, embeddedUrl, makeRolesAndDatabase, ownerRole } from '../../lib/db/embedded/roles'
import { migrate } from '../../lib/db/migrate'
import { builtWorker } from '../../lib/ops/build'
import { findFreePort } from '../../lib/ops/find-free-port'
import { serveApp } from '../../lib/ops/serve'
import { makeBakery, type TestBakery, type TestPerson } from './bakery'
import { startTestServer } from './database-server'
import { openGate, type Gate } from './gate'

export type App = {
  url: string
  /** PostgreSQL's superuser on the app's database, for looking at what happened. */
  look: pg.Pool
  /** The app's way to its database; whoever shuts it opens it again. */
  gate: Gate
}

type Fixtures = {
  /** A bakery of the test's own, with four people signed in. */
  bakery: TestBakery
  /** A page with a person signed in, as the desk sees it. */
  as(person: TestPerson, options?: Parameters<Browser['newContext']>[0]): Promise<Page>
  /** Every console error and failed script of the test's pages; an unexpected one fails the test. */
  expectNoise(pattern: RegExp): void
}

const databaseName = 'browser'

/** The production build on a database of its own, and people who are signed in without typing. */
export const test = base.extend<Fixtures & { noise: { lines: string[]; allowed: RegExp[] } }, { app: App }>({
  app: [
    async ({}, use) => {
      const { server, stop } = await startTestServer()
      await makeRolesAndDatabase(server.port, databaseName, server)
      await migrate(embeddedUrl(server.port, databaseName, ownerRole, server.ownerPassword), appRole)
      const gate = await openGate(server.port)
      const port = await findFreePort()
      const url = `http://localhost:${port}`
      const settings = {
        DATABASE_URL: embeddedUrl(server.port, databaseName, appRole, server.appPassword),
        EVENDOUGH_WORKER: builtWorker,
        NEXTAUTH_SECRET: randomBytes(48).toString('base64url'),
        NEXTAUTH_URL: url,
        EVENDOUGH_LOG_LEVEL: 'warn',
      }
      // The test makes people and cookies by the app's own code, so it has the app's own settings.
      Object.assign(process.env, settings)
      const served = await serveApp(port, {
        ...settings,
        DATABASE_URL: embeddedUrl(gate.port, databaseName, appRole, server.appPassword),
      })
      const look = new pg.Pool({
        connectionString: embeddedUrl(server.port, databaseName, 'postgres', server.superuserPassword),
      })
      await use({ url, look, gate })
      await look.end()
      await closeDb()
      await served.stop()
      await gate.close()
      await stop()
    },
    { scope: 'worker', timeout: 90_000 },
  ],

  baseURL: async ({ app }, use) => use(app.url),

  noise: async ({}, use) => {
    const noise: { lines: string[]; allowed: RegExp[] } = { lines: [], allowed: [] }
    await use(noise)
    expect(
      noise.lines.filter((line) => !noise.allowed.some((pattern) => pattern.test(line))),
      'unexpected errors in the browser',
    ).toEqual([])
  },

  expectNoise: async ({ noise }, use) => use((pattern) => void noise.allowed.push(pattern)),

  context: async ({ context, noise }, use) => {
    listen(context, noise.lines)
    await use(context)
  },

  bakery: async ({ app: _ }, use) => use(await makeBakery('Mill Row', new Date())),

  as: async ({ app, browser, noise }, use) => {
    const contexts: BrowserContext[] = []
    await use(async (person, options) => {
      const context = await browser.newContext({ baseURL: app.url, ...options })
      contexts.push(context)
      listen(context, noise.lines)
      await context.addCookies([await cookieOf(person.sessionSecret, app.url)])
      return context.newPage()
    })
    for (const context of contexts) await context.close()
  },
})

export { expect }

/** The cookie that signing in would give. */
export async function cookieOf(sessionSecret: string, url: string) {
  return {
    name: sessionCookie,
    value: await makeSessionToken(sessionSecret),
    url: url.replace('http:', 'https:'),
    secure: true,
    httpOnly: true,
    sameSite: 'Lax' as const,
  }
}

function listen(context: BrowserContext, lines: string[]): void {
  context.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') lines.push(message.text())
  })
  context.on('weberror', (error) => lines.push(error.error().message))
}
