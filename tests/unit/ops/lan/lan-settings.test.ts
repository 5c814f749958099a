import type { NetworkInterfaceInfo } from 'node:os'
import { expect, it } from 'vitest'
import { readLanSettings } from '../../../../lib/ops/lan/lan-settings'
import { liesIn } from '../../../../lib/ops/lan/networks'

const ip = (address: string, length: number, internal = false): NetworkInterfaceInfo => ({
  address,
  cidr: `${address}/${length}`,
  netmask: '',
  family: 'IPv4',
  mac: '00:00:00:00:00:00',
  internal,
})
const machine = {
  hostname: 'Kitchen-PC.fritz.box',
  interfaces: {
    lo: [ip('127.0.0.1', 8, true)],
    eth0: [ip('192.168.1.77', 24), ip('203.0.113.9', 24)],
    wlan0: [ip('10.20.30.40', 20)],
    docker0: [ip('172.17.0.1', 16)],
    tun0: [ip('10.8.0.2', 24)],
  },
}
const read = (env: Record<string, string> = {}, of: Partial<typeof machine> = {}) =>
  readLanSettings(env as unknown as NodeJS.ProcessEnv, { ...machine, ...of })

it('is by itself at the machine’s own name and its addresses in the bakery’s networks', () => {
  expect(read()).toEqual({
    name: 'kitchen-pc.local',
    port: 3443,
    trustPort: 3080,
    origin: 'https://kitchen-pc.local:3443',
    addresses: [
      { address: '192.168.1.77', network: '192.168.1.0/24' },
      { address: '10.20.30.40', network: '10.20.16.0/20' },
    ],
  })
})

it('takes names, ports and addresses that are set; 443 stands in no address', () => {
  expect(
    read({
      EVENDOUGH_LAN_NAME: 'Bench.Mill-Row.example',
      EVENDOUGH_LAN_PORT: '443',
      EVENDOUGH_LAN_TRUST_PORT: '80',
      EVENDOUGH_LAN_ADDRESSES: '127.0.0.1, 172.17.0.1',
    }),
  ).toEqual({
    name: 'bench.mill-row.example',
    port: 443,
    trustPort: 80,
    origin: 'https://bench.mill-row.example',
    addresses: [
      { address: '127.0.0.1', network: '127.0.0.0/8' },
      { address: '172.17.0.1', network: '172.17.0.0/16' },
    ],
  })
})

it.each([
  ['localhost'],
  ['com'],
  ['co.uk'],
  ['bank.com'],
  ['192.168.1.77'],
  ['kitchen_pc.local'],
  ['-kitchen.local'],
  ['kitchen..local'],
  ['kitchen.local.'],
  ['kitchen.local/x'],
  ['küche.local'],
  [`${'a'.repeat(64)}.local`],
  ['local'],
])('does not take the name %s', (name) => {
  expect(() => read({ EVENDOUGH_LAN_NAME: name })).toThrow(/^Wrong settings: EVENDOUGH_LAN_NAME must /)
})

it.each([
  [{ EVENDOUGH_LAN_ADDRESSES: '0.0.0.0' }, /0\.0\.0\.0 is no private address of this machine/],
  [{ EVENDOUGH_LAN_ADDRESSES: '203.0.113.9' }, /203\.0\.113\.9 is no private address .* needs a proxy/],
  [{ EVENDOUGH_LAN_ADDRESSES: '192.168.1.78' }, /It has 127\.0\.0\.1, 192\.168\.1\.77, 10\.20\.30\.40/],
  [{ EVENDOUGH_LAN_PORT: '0' }, /EVENDOUGH_LAN_PORT/],
  [{ EVENDOUGH_LAN_PORT: '3080' }, /the same port/],
  [{ EVENDOUGH_URL: 'https://kitchen.example' }, /Take either/],
  [{ EVENDOUGH_BEHIND_PROXY: '1' }, /Take either/],
])('says in one line what is wrong with %j', (env, line) => {
  expect(() => read(env)).toThrow(line)
})

it('says so where the machine is in no network, or has a name that stands in no address', () => {
  expect(() => read({}, { interfaces: { ...machine.interfaces, eth0: [], wlan0: [] } })).toThrow(
    /^This machine has no address on a network of the bakery/,
  )
  expect(() => read({}, { hostname: 'Küche' })).toThrow(/^This machine’s own name, Küche, cannot stand in an address/)
})

it.each([
  ['192.168.1.0', '192.168.1.0/24', true],
  ['192.168.1.255', '192.168.1.0/24', true],
  ['192.168.2.0', '192.168.1.0/24', false],
  ['10.20.31.1', '10.20.16.0/20', true],
  ['10.20.32.1', '10.20.16.0/20', false],
])('%s in %s: %s', (address, network, lies) => {
  expect(liesIn(address, network)).toBe(lies)
})
