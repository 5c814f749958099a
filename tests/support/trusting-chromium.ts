import { spawnSync } from 'node:child_process'
import { createHash, X509Certificate } from 'node:crypto'
import fs from 'node:fs'
import path from 'node:path'
import { chromium, type Browser } from 'playwright/test'
import { chromiumArguments, findOrInstallChromium } from './chromium'

/** How a browser came to trust a certificate. */
export type Trust = 'by its own store' | 'by the key it was told'

/**
 * A Chromium in a home of its own, which finds a name on this machine, and trusts an authority if it is given one: in the
 * store of its home where certutil is there or can be installed (Debian: libnss3-tools), else by the authority's key alone,
 * which says nothing of its names.
 */
export async function openChromium(
  home: string,
  name: string,
  authority?: string,
): Promise<{ browser: Browser; trust: Trust | null }> {
  fs.mkdirSync(home, { recursive: true })
  const trust = authority === undefined ? null : trustIn(home, authority)
  const browser = await chromium.launch({
    executablePath: findOrInstallChromium(),
    args: [
      ...chromiumArguments,
      `--host-resolver-rules=MAP ${name} 127.0.0.1`,
      ...(authority !== undefined && trust === 'by the key it was told'
        ? [`--ignore-certificate-errors-spki-list=${keyOf(authority)}`]
        : []),
    ],
    env: { ...process.env, HOME: home },
  })
  return { browser, trust }
}

function trustIn(home: string, authority: string): Trust {
  if (!hasCertutil()) {
    console.log('certutil is not here: the browser trusts the authority by its key, not by its store.')
    return 'by the key it was told'
  }
  const store = path.join(home, '.pki', 'nssdb')
  fs.mkdirSync(store, { recursive: true })
  certutil('-N', '-d', `sql:${store}`, '--empty-password')
  const file = path.join(home, 'authority.pem')
  fs.writeFileSync(file, authority)
  certutil('-A', '-d', `sql:${store}`, '-n', 'bakery', '-t', 'C,,', '-i', file)
  return 'by its own store'
}

function certutil(...args: string[]): void {
  const { status, stderr } = spawnSync('certutil', args, { encoding: 'utf8' })
  if (status !== 0) throw new Error(`certutil ${args[0]}: ${stderr}`)
}

function hasCertutil(): boolean {
  const isThere = () => spawnSync('certutil', ['-H']).error === undefined
  if (isThere()) return true
  if (process.getuid?.() !== 0) return false
  for (const args of [
    ['update', '-q'],
    ['install', '-y', '-q', '--no-install-recommends', 'libnss3-tools'],
  ])
    spawnSync('apt-get', args, { stdio: 'ignore', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } })
  return isThere()
}

/** SHA-256 of a certificate's public key, as Chromium is told it. */
function keyOf(certificate: string): string {
  const { publicKey } = new X509Certificate(certificate)
  return createHash('sha256')
    .update(publicKey.export({ type: 'spki', format: 'der' }))
    .digest('base64')
}
