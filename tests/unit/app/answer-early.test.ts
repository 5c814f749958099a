import { describe, expect, it } from 'vitest'
import { answerEarly } from '@/app/answer-early'
import { transportHeader } from '@/lib/auth/transport-header'

const host = 'localhost:3000'

describe('what a request is answered before any action sees it', () => {
  it.each<[string, Record<string, string>]>([
    ['no Origin', {}],
    ['no Origin, though of this site', { 'sec-fetch-site': 'same-origin' }],
    ['an Origin elsewhere', { origin: 'http://elsewhere.example' }],
    ['another port of this host', { origin: 'http://localhost:3001' }],
    ['an opaque Origin', { origin: 'null' }],
    ['another site', { origin: 'http://localhost:3000', 'sec-fetch-site': 'cross-site' }],
    ['another origin of this site', { origin: 'http://localhost:3000', 'sec-fetch-site': 'same-site' }],
    ['an address typed in', { origin: 'http://localhost:3000', 'sec-fetch-site': 'none' }],
  ])('403 for a write with %s', (_, headers) => {
    expect(answerEarly('POST', new Headers({ host, ...headers }))).toBe(403)
  })

  it('lets a write of our own page through, also behind a proxy', () => {
    expect(
      answerEarly('POST', new Headers({ host, origin: 'http://localhost:3000', 'sec-fetch-site': 'same-origin' })),
    ).toBeNull()
    expect(answerEarly('POST', new Headers({ host, origin: 'http://localhost:3000' }))).toBeNull()
    expect(
      answerEarly(
        'POST',
        new Headers({ host, 'x-forwarded-host': 'kitchen.example', origin: 'https://kitchen.example' }),
      ),
    ).toBeNull()
  })

  it('lets reading through, wherever the link was', () => {
    expect(answerEarly('GET', new Headers({ host, 'sec-fetch-site': 'cross-site' }))).toBeNull()
  })
})

describe('https alone', () => {
  it('is told only behind a proxy at an https address that is not this machine', () => {
    const behind = { EVENDOUGH_BEHIND_PROXY: '1' }
    expect(transportHeader({ ...behind, NEXTAUTH_URL: 'https://kitchen.example' })).toBe('max-age=31536000')
    expect(transportHeader({ NEXTAUTH_URL: 'https://kitchen.example' })).toBeNull()
    expect(transportHeader({ ...behind, NEXTAUTH_URL: 'http://localhost:3000' })).toBeNull()
    expect(transportHeader({ ...behind, NEXTAUTH_URL: 'https://localhost:3000' })).toBeNull()
    expect(transportHeader(behind)).toBeNull()
  })
})
