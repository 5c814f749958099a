import { defineConfig } from '@playwright/test'
import { findBrowser } from './tests/support/find-browser'

const { executablePath, args } = findBrowser()

export default defineConfig({
  testDir: 'tests/browser',
  outputDir: '.test/browser',
  // Two cores, and the app and its database run beside the browser.
  workers: 1,
  retries: 0,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  forbidOnly: true,
  reporter: [['list'], ['json', { outputFile: '.test/browser.json' }]],
  use: {
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    launchOptions: { executablePath, args },
    screenshot: 'only-on-failure',
    trace: 'retain-on-failure',
  },
})
