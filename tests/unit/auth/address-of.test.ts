import { expect, it } from 'vitest'
import { addressOf, frontHeader } from '@/lib/auth/address-of'

const from = (headers: Record<string, string>) => (name: string) => headers[name]
const forwarded = { 'x-forwarded-for': '9.9.9.9, 192.168.1.30' }

it('without anybody in front nobody is believed', () => {
  expect(addressOf(from(forwarded), {})).toBe('direct')
  expect(addressOf(from({ ...forwarded, [frontHeader]: '' }), {})).toBe('direct')
})

it('a proxy that is trusted by setting is believed for the last hop', () => {
  expect(addressOf(from(forwarded), { EVENDOUGH_BEHIND_PROXY: '1' })).toBe('192.168.1.30')
  expect(addressOf(from({}), { EVENDOUGH_BEHIND_PROXY: '1' })).toBe('unknown')
})

it('with a front of our own that one alone is believed, by its secret', () => {
  const env = { EVENDOUGH_FRONT_SECRET: 'of this start' }
  expect(addressOf(from({ ...forwarded, [frontHeader]: 'of this start' }), env)).toBe('192.168.1.30')
  for (const guess of ['', 'of this star', 'of this start ', 'of this stars'])
    expect(addressOf(from({ ...forwarded, [frontHeader]: guess }), env), guess).toBe('direct')
  expect(addressOf(from(forwarded), { ...env, EVENDOUGH_BEHIND_PROXY: '1' })).toBe('direct')
})
