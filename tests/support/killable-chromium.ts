import fs from 'node:fs'
import path from 'node:path'
import { chromium, type BrowserContext } from 'playwright/test'
import { chromiumArguments, findOrInstallChromium } from './chromium'

/**
 * A Chromium with a profile that stays, in a folder, and the way to kill it without a word, with everything it has started:
 * what it had not put on the disk is gone.
 */
export async function openKillable(
  folder: string,
  url: string,
): Promise<{ context: BrowserContext; kill(): Promise<void> }> {
  const [pidFile, program] = [path.join(folder, 'chromium.pid'), path.join(folder, 'chromium.sh')]
  // By its own words, so that nobody else's is ever ended.
  fs.writeFileSync(program, `#!/bin/sh\necho $$ > '${pidFile}'\nexec '${findOrInstallChromium()}' "$@"\n`, {
    mode: 0o755,
  })
  const context = await chromium.launchPersistentContext(path.join(folder, 'profile'), {
    executablePath: program,
    args: chromiumArguments,
    baseURL: url,
    hasTouch: true,
    viewport: { width: 1080, height: 810 },
  })
  const closed = new Promise<void>((resolve) => context.once('close', () => resolve()))
  return {
    context,
    async kill() {
      // It leads a group of its own, in which its helpers are.
      process.kill(-Number(fs.readFileSync(pidFile, 'utf8')), 'SIGKILL')
      await closed
    },
  }
}
