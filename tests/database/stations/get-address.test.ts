import { afterAll, afterEach, beforeAll, expect, it, vi } from 'vitest'
import type { FrontFacts } from '@/lib/kitchen/stations/front-facts'
import { getAddress } from '@/lib/kitchen/stations/get-address'
import { makeBakery, refusalOf, valueOf, type TestBakery } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'

let database: FreshDatabase
let bakery: TestBakery

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
})
afterAll(() => database.drop())
afterEach(() => vi.unstubAllEnvs())

const facts: FrontFacts = {
  origin: 'https://kitchen.local:3443',
  trustAddresses: ['http://192.168.1.20:3080'],
  certificate: {
    name: 'Evendough kitchen.local 1a2b3c',
    host: 'kitchen.local',
    networks: ['192.168.1.0/24'],
    fingerprint: 'AA:BB',
    thumbprint: 'CC:DD',
    endsAt: '2036-11-27T01:00:00.000Z',
  },
}
const ask = async () => valueOf(await getAddress.call(bakery.head.caller, {}))

it('with the front of this install says its address, its certificate and where to trust it, each as a picture too', async () => {
  vi.stubEnv('NEXTAUTH_URL', facts.origin)
  vi.stubEnv('EVENDOUGH_FRONT', JSON.stringify(facts))
  const found = await ask()
  expect(found).toMatchObject({
    way: 'front',
    address: `${facts.origin}/station`,
    certificate: facts.certificate,
    trust: [{ address: facts.trustAddresses[0] }],
  })
  expect(JSON.stringify(found)).not.toContain('SECRET')
})

it('behind a proxy with https says its address, and on this machine alone that no tablet comes in', async () => {
  vi.stubEnv('NEXTAUTH_URL', 'https://kitchen.example/')
  expect(await ask()).toMatchObject({ way: 'proxy', address: 'https://kitchen.example/station' })
  vi.stubEnv('NEXTAUTH_URL', 'http://localhost:3000')
  expect(await ask()).toEqual({ way: 'none', address: 'http://localhost:3000' })
})

it('is for the owner and the head baker', async () => {
  vi.stubEnv('NEXTAUTH_URL', 'http://localhost:3000')
  expect(valueOf(await getAddress.call(bakery.owner.caller, {})).way).toBe('none')
  expect(refusalOf(await getAddress.call(bakery.early.caller, {}))).toBe('not-allowed')
})
