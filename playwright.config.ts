import path from 'node:path'
import { defineConfig } from 'playwright/test'
import { chromiumArguments, findOrInstallChromium } from './tests/support/chromium'

const root = import.meta.dirname
const load = '**/load.test.ts'

export default defineConfig({
  testDir: path.join(root, 'tests/browser'),
  testMatch: '**/*.test.ts',
  outputDir: path.join(root, '.test/browser'),
  // Each worker has an app and a database of its own, each test a bakery; a browser waits as much as it works.
  workers: 2,
  fullyParallel: true,
  // A test that passes at the second try tells of a fault that a person will meet.
  retries: 0,
  forbidOnly: true,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  reporter: [['list'], ['json', { outputFile: path.join(root, '.test/browser.json') }]],
  use: {
    browserName: 'chromium',
    launchOptions: { executablePath: findOrInstallChromium(), args: chromiumArguments },
    locale: 'en-GB',
    timezoneId: 'Europe/Berlin',
    viewport: { width: 1280, height: 800 },
    screenshot: 'only-on-failure',
    trace: 'retain-on-failure',
  },
  projects: [
    { name: 'browser', testIgnore: load },
    // It takes all of the machine: beside it others would wait longer than they may.
    { name: 'load', testMatch: load, dependencies: ['browser'] },
  ],
})
