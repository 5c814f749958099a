import path from 'node:path'
import { defineConfig } from 'vitest/config'

const root = import.meta.dirname

export default defineConfig({
  resolve: {
    alias: { '@': root },
    // `server-only` throws under any other condition than the one Next's server uses.
    conditions: ['react-server', 'node', 'import', 'default'],
  },
  ssr: { resolve: { conditions: ['react-server', 'node', 'import', 'default'] } },
  test: {
    // Clock-dependent code is tested in a zone with summer time, so that a forgotten zone shows.
    env: { TZ: 'Europe/Berlin' },
    projects: [
      {
        extends: true,
        test: { name: 'unit', include: ['tests/unit/**/*.test.ts', 'tests/published/**/*.test.ts'] },
      },
    ],
    reporters: ['default'],
    outputFile: path.join(root, '.test/unit.json'),
  },
})
