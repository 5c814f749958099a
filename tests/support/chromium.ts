import { spawnSync } from 'node:child_process'
import fs from 'node:fs'
import path from 'node:path'
import { chromium } from 'playwright/test'

const systemNames = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable']

/** As root Chromium has no sandbox; what else it does by itself at the start only disturbs a test. */
export const chromiumArguments = [
  ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

/**
 * A Chromium for the browser tests: Playwright's own, else the system's, else one that is installed now.
 * @returns path of the program
 * @throws Error in one line that says what to do
 */
export function findOrInstallChromium(): string {
  const found = findChromium()
  if (found) return found
  console.log('No Chromium is here; installing one …')
  for (const [program, ...args] of installers()) {
    const done = spawnSync(program, args, {
      stdio: 'inherit',
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    })
    // An `apt-get update` that failed need not stop the installation: the lists may be there.
    if (done.error) continue
    const installed = findChromium()
    if (installed) return installed
  }
  throw new Error(
    'The browser tests need Chromium: install it (apt-get install chromium, or npx playwright install chromium) and run this again.',
  )
}

function findChromium(): string | undefined {
  const folders = [...(process.env.PATH ?? '').split(path.delimiter), '/usr/bin', '/usr/local/bin'].filter(Boolean)
  const onSystem = systemNames.flatMap((name) => folders.map((folder) => path.join(folder, name)))
  return [chromium.executablePath(), ...onSystem].find((file) => file !== '' && fs.existsSync(file))
}

function installers(): [string, ...string[]][] {
  const playwright: [string, ...string[]] = [process.execPath, 'node_modules/playwright/cli.js', 'install', 'chromium']
  if (process.getuid?.() !== 0) return [playwright]
  return [
    ['apt-get', 'update', '-q'],
    ['apt-get', 'install', '-y', '-q', '--no-install-recommends', 'chromium'],
    playwright,
  ]
}
