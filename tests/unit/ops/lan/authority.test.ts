import { spawnSync } from 'node:child_process'
import { createPrivateKey, X509Certificate } from 'node:crypto'
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { makeAuthority, type Authority } from '../../../../lib/ops/lan/authority'
import { keepRenewed } from '../../../../lib/ops/lan/renewal'
import { certify, isDue, type ServerCertificate } from '../../../../lib/ops/lan/server-certificate'

const day = 86_400_000
const now = new Date('2027-03-01T04:00:00Z')
const after = (days: number) => new Date(now.getTime() + days * day)
const daysOf = (certificate: X509Certificate) =>
  (new Date(certificate.validTo).getTime() - new Date(certificate.validFrom).getTime()) / day

let authority: Authority
beforeAll(async () => {
  authority = await makeAuthority('kitchen.local', ['192.168.1.0/24'], now)
})

/** What OpenSSL says of a certificate shown under a name or address; null where there is no OpenSSL. */
function openssl(shown: ServerCertificate, asked: readonly string[]): string {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evendough-certificate-'))
  const [own, root] = [path.join(folder, 'own.pem'), path.join(folder, 'root.pem')]
  fs.writeFileSync(own, shown.chain)
  fs.writeFileSync(root, authority.certificate)
  const at = String(Math.floor(now.getTime() / 1000))
  const { stdout, stderr } = spawnSync(
    'openssl',
    ['verify', '-x509_strict', '-attime', at, '-purpose', 'sslserver', '-CAfile', root, ...asked, own],
    { encoding: 'utf8' },
  )
  fs.rmSync(folder, { recursive: true })
  return `${stdout}${stderr}`
}
const withOpenssl = it.skipIf(spawnSync('openssl', ['version']).error !== undefined)

describe('the authority', () => {
  it('is one, with a key of its own, for ten years, and says so of nobody else', () => {
    const read = new X509Certificate(authority.certificate)
    expect(read.ca).toBe(true)
    expect(read.checkPrivateKey(createPrivateKey(authority.key))).toBe(true)
    expect(read.verify(read.publicKey)).toBe(true)
    expect(read.publicKey.asymmetricKeyDetails?.namedCurve).toBe('prime256v1')
    expect(daysOf(read)).toBeCloseTo(3650, 0)
    expect(read.keyUsage).toEqual(['1.3.6.1.5.5.7.3.1'])
  })

  it('is another one each time, by key, number and name: a browser takes two of one name and number for a fraud', async () => {
    const other = new X509Certificate((await makeAuthority('kitchen.local', ['192.168.1.0/24'], now)).certificate)
    const read = new X509Certificate(authority.certificate)
    expect(other.serialNumber).not.toBe(read.serialNumber)
    expect(other.subject).not.toBe(read.subject)
    expect(other.fingerprint256).not.toBe(read.fingerprint256)
  })
})

describe('the server’s certificate', () => {
  it('is for the name and the addresses that may be vouched for, and holds for 397 days', async () => {
    const shown = await certify(authority, ['192.168.1.20', '10.0.0.5'], now)
    const read = new X509Certificate(shown.chain)
    expect(read.subjectAltName).toBe('DNS:kitchen.local, IP Address:192.168.1.20')
    expect(read.ca).toBe(false)
    expect(read.verify(new X509Certificate(authority.certificate).publicKey)).toBe(true)
    expect(read.checkPrivateKey(createPrivateKey(shown.key))).toBe(true)
    expect(daysOf(read)).toBeLessThanOrEqual(397)
    expect(daysOf(read)).toBeGreaterThan(396)
    expect(shown.endsAt).toEqual(new Date(read.validTo))
  })

  it('ends with the authority at the latest', async () => {
    const shown = await certify(authority, ['192.168.1.20'], after(3600))
    expect(shown.endsAt).toEqual(new Date(new X509Certificate(authority.certificate).validTo))
  })

  withOpenssl('is taken by OpenSSL under its name and address', async () => {
    const shown = await certify(authority, ['192.168.1.20'], now)
    expect(openssl(shown, ['-verify_hostname', 'kitchen.local'])).toMatch(/: OK\n$/)
    expect(openssl(shown, ['-verify_ip', '192.168.1.20'])).toMatch(/: OK\n$/)
    expect(openssl(shown, ['-verify_hostname', 'other.local'])).toMatch(/hostname mismatch/i)
  })

  withOpenssl.each([
    ['another name', { name: 'bank.example', networks: [] }],
    ['an address elsewhere', { name: 'kitchen.local', networks: ['8.8.8.0/24'] }],
  ])('is refused by OpenSSL where whoever has the key vouches for %s', async (_, claimed) => {
    const shown = await certify({ ...authority, ...claimed }, ['8.8.8.8'], now)
    expect(new X509Certificate(shown.chain).subjectAltName).toMatch(/bank\.example|8\.8\.8\.8/)
    expect(openssl(shown, [])).toMatch(/permitted subtree violation/i)
  })
})

describe('renewal', () => {
  it('comes sixty days before the end, once, and never past the authority’s own end', async () => {
    const first = await certify(authority, ['192.168.1.20'], now)
    const shown: ServerCertificate[] = []
    const renewal = keepRenewed(first, { authority, addresses: ['192.168.1.20'], show: (one) => shown.push(one) })
    await renewal.look(after(330))
    expect(shown).toEqual([])
    await renewal.look(after(338))
    await renewal.look(after(339))
    expect(shown).toHaveLength(1)
    expect(shown[0]?.endsAt.getTime()).toBeGreaterThan(after(338 + 396).getTime())
    expect(new X509Certificate(shown[0]!.chain).subjectAltName).toBe('DNS:kitchen.local, IP Address:192.168.1.20')
    renewal.stop()
  })

  it('comes at once where the clock was put back, so that the one shown has not begun', async () => {
    const ahead = await certify(authority, ['192.168.1.20'], after(30))
    expect(isDue(ahead, authority, after(30))).toBe(false)
    expect(isDue(ahead, authority, now)).toBe(true)
  })

  it('is not due where a new certificate would end no later', async () => {
    const last = await certify(authority, ['192.168.1.20'], after(3600))
    expect(isDue(last, authority, after(3649))).toBe(false)
  })
})
