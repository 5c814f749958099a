import path from 'node:path'
import { defineConfig } from 'vitest/config'

const root = import.meta.dirname
const heavyWorker = path.join(root, 'tests/support/heavy-worker.ts')
// `server-only` throws under any other condition than the one Next's server uses.
const conditions = ['react-server', 'node']

export default defineConfig({
  resolve: { alias: { '@': root }, conditions },
  ssr: { resolve: { conditions } },
  test: {
    env: {
      // Clock-dependent code is tested in a zone with summer time, so that a forgotten zone shows.
      TZ: 'Europe/Berlin',
      EVENDOUGH_LOG_LEVEL: 'silent',
      // As an install has one of its own: PINs are hashed with a key out of it.
      NEXTAUTH_SECRET: 'a secret for tests alone, of no use anywhere else',
    },
    maxWorkers: 2,
    setupFiles: [path.join(root, 'tests/support/run-settings.ts')],
    projects: [
      {
        extends: true,
        // Two cores carry other work too: a long quadrature may wait for its turn.
        // Calculations and words keep nothing between files, so the files share one load of them: a third of the time.
        test: {
          name: 'unit',
          isolate: false,
          include: ['tests/unit/**/*.test.ts', 'tests/published/**/*.test.ts'],
          globalSetup: [heavyWorker],
          testTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'database',
          include: ['tests/database/**/*.test.ts'],
          globalSetup: [path.join(root, 'tests/support/database-server.ts'), heavyWorker],
          // A copy of the template is made in a hook; a slow disk may take its time.
          hookTimeout: 30_000,
          testTimeout: 30_000,
        },
      },
    ],
  },
})
