import { X509Certificate } from 'node:crypto'
import { beforeAll, expect, it } from 'vitest'
import { findFreePort } from '../../../../lib/ops/find-free-port'
import { makeAuthority, type Authority } from '../../../../lib/ops/lan/authority'
import { certificateFacts } from '../../../../lib/ops/lan/certificate-facts'
import { openTrustListener } from '../../../../lib/ops/lan/trust-listener'
import { trustAnswers } from '../../../../lib/ops/lan/trust-page'

const origin = 'https://kitchen.local:3443'
let authority: Authority
let answerTo: ReturnType<typeof trustAnswers>
beforeAll(async () => {
  authority = await makeAuthority('kitchen.local', ['192.168.1.0/24'], new Date())
  answerTo = trustAnswers({ origin, certificate: certificateFacts(authority) }, authority.certificate)
})

it('shows how to trust the certificate, its fingerprint, that nobody tried the steps, and the one address', () => {
  const { status, headers, body } = answerTo('GET', '/')
  expect(status).toBe(200)
  expect(headers['Content-Type']).toBe('text/html; charset=utf-8')
  const read = new X509Certificate(authority.certificate)
  for (const shown of [read.fingerprint256, read.fingerprint, 'Not tried on a device', 'iPad', 'Android', 'Windows'])
    expect(body).toContain(shown)
  const links = [...String(body).matchAll(/href="([^"]*)"/g)].map(([, to]) => to)
  expect(links).toEqual(['/profile', '/certificate', `${origin}/station`])
  expect(body).not.toMatch(/<script|<form|<img/)
})

it('gives the very certificate, and the same in a profile', () => {
  const { raw } = new X509Certificate(authority.certificate)
  const file = answerTo('GET', '/certificate')
  expect(file.headers['Content-Type']).toBe('application/x-x509-ca-cert')
  expect(file.body).toEqual(raw)
  const profile = answerTo('GET', '/profile')
  expect(profile.headers['Content-Type']).toBe('application/x-apple-aspen-config')
  expect(/<data>(.*)<\/data>/.exec(String(profile.body))?.[1]).toBe(raw.toString('base64'))
  const ids = [...String(profile.body).matchAll(/<key>PayloadUUID<\/key><string>(.*?)<\/string>/g)].map(([, id]) => id)
  expect(new Set(ids).size).toBe(2)
  expect(answerTo('GET', '/profile')).toEqual(profile)
})

it.each([
  ['/sign-in'],
  ['/api/v1/entries'],
  ['/__proto__'],
  ['/constructor'],
  ['//other.example/'],
  ['http://other.example/'],
])('has nothing at %s, and leads nowhere', (path) => {
  const { status, headers, body } = answerTo('GET', path)
  expect(status).toBe(404)
  expect(Object.keys(headers)).not.toContain('Location')
  expect(body).not.toContain('href')
})

it('no answer holds a key, a cookie or a way to another site', () => {
  for (const path of ['/', '/certificate', '/profile', '/else']) {
    const { headers, body } = answerTo('GET', path)
    expect(String(body)).not.toContain('PRIVATE')
    expect(Object.keys(headers).map((name) => name.toLowerCase())).not.toContain('set-cookie')
    expect(headers['Content-Security-Policy']).toMatch(/^default-src 'none'; style-src 'sha256-/)
  }
})

it('over http: GET and HEAD alone, and none of what comes with them is looked at', async () => {
  const port = await findFreePort()
  const listener = await openTrustListener({ address: '127.0.0.1', port }, answerTo)
  const address = `http://127.0.0.1:${port}`
  const got = await fetch(address, { headers: { cookie: 'a=1', host: 'other.example' } })
  expect(got.status).toBe(200)
  expect(got.headers.get('set-cookie')).toBeNull()
  expect(await got.text()).toBe(answerTo('GET', '/').body)
  const head = await fetch(address, { method: 'HEAD' })
  expect(head.status).toBe(200)
  expect(head.headers.get('content-length')).toBe(got.headers.get('content-length'))
  for (const method of ['POST', 'PUT', 'DELETE', 'OPTIONS'])
    expect((await fetch(address, { method })).status, method).toBe(405)
  await listener.close()
  await expect(fetch(address)).rejects.toThrow()
})
