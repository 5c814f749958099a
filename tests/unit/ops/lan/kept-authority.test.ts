import { generateKeyPairSync } from 'node:crypto'
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { keptAuthority, type Wanted } from '../../../../lib/ops/lan/kept-authority'

const now = new Date('2027-03-01T04:00:00Z')
const years = (count: number) => new Date(now.getTime() + count * 365 * 86_400_000)
const wanted: Wanted = {
  name: 'kitchen.local',
  port: 3443,
  addresses: [{ address: '192.168.1.20', network: '192.168.1.0/24' }],
}

let folder: string
let said: string[]
const file = () => path.join(folder, 'lan-authority.json')
const kept = (change: Partial<Wanted> = {}, { at = now, trustAnew = false } = {}) =>
  keptAuthority(folder, { ...wanted, ...change }, { now: at, trustAnew, say: (sentence) => said.push(sentence) })

beforeEach(() => {
  folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evendough-authority-'))
  said = []
})
afterEach(() => fs.rmSync(folder, { recursive: true }))

it('is made once, in a file that nobody else can read, and is the same at every start', async () => {
  const first = await kept()
  expect(fs.statSync(file()).mode & 0o777).toBe(0o600)
  expect(await kept()).toEqual(first)
  expect(await kept({}, { at: years(5) })).toEqual(first)
  expect(said).toEqual([])
})

describe('what would cost tablets their trust or what lies on them', () => {
  const sayings: [string, Partial<Wanted>, { at?: Date }, RegExp][] = [
    [
      'another name',
      { name: 'oven.local' },
      {},
      /^Tablets know this bakery as kitchen\.local; this start would be oven\.local\. .*was not sent yet stays behind.*To keep the name: EVENDOUGH_LAN_NAME=kitchen\.local\. .*--trust-anew$/,
    ],
    [
      'another port',
      { port: 443 },
      {},
      /^Tablets know this bakery at port 3443; this start would be at 443\. .*was not sent yet stays behind.*To keep the port: EVENDOUGH_LAN_PORT=3443\. .*--trust-anew$/,
    ],
    [
      'a clock that was put back',
      {},
      { at: years(-1) },
      /begins on 2027-03-01, and this machine’s clock says 2026-03-01\. If the clock is wrong, set it.*--trust-anew$/,
    ],
    ['an end', {}, { at: years(11) }, /ended on 2037-02-26\. Each tablet has to trust a new one.*--trust-anew$/],
  ]

  it.each(sayings)('%s is said and not done', async (_, change, when, sentence) => {
    await kept()
    const before = fs.readFileSync(file(), 'utf8')
    await expect(kept(change, when)).rejects.toThrow(sentence)
    expect(fs.readFileSync(file(), 'utf8')).toBe(before)
  })

  it.each(sayings)('%s is done once it was confirmed', async (_, change, when) => {
    const first = await kept()
    const second = await kept(change, { ...when, trustAnew: true })
    // Another port asks for no new certificate: trust goes by name.
    if ('port' in change) expect(second).toEqual(first)
    else expect(second.certificate).not.toBe(first.certificate)
    expect(second.name).toBe(change.name ?? 'kitchen.local')
    expect(await kept(change, when)).toEqual(second)
  })
})

it('a confirmation that stays in a start file costs no trust', async () => {
  const first = await kept()
  expect(await kept({}, { trustAnew: true })).toEqual(first)
  expect(said).toEqual(['--trust-anew was not needed: the certificate that tablets trust still fits and is kept.'])
})

it('a clock that cannot be right makes nothing', async () => {
  await expect(kept({}, { at: new Date(0) })).rejects.toThrow(/^This machine’s clock says 1970-01-01\. Set it right/)
  expect(fs.existsSync(file())).toBe(false)
})

it('an address in another network is not vouched for, which is said; confirmed, it is', async () => {
  const moved = { addresses: [{ address: '10.0.0.7', network: '10.0.0.0/24' }] }
  const first = await kept()
  expect(await kept(moved)).toEqual(first)
  expect(said).toEqual([expect.stringMatching(/does not vouch for 10\.0\.0\.7/)])
  const second = await kept(moved, { trustAnew: true })
  expect(second.networks).toEqual(['10.0.0.0/24'])
})

it('the last year of a certificate is said at each start', async () => {
  await kept()
  await kept({}, { at: years(9.5) })
  expect(said).toEqual([expect.stringMatching(/ends on 2037-02-26\. .*--trust-anew/)])
})

it.each([
  ['no JSON', () => '{'],
  ['nothing in it', () => '{}'],
  ['a key of another', swapKey],
])('a file with %s is named and left alone: a new one would be one that nobody trusts', async (_, spoil) => {
  await kept()
  const spoilt = spoil(fs.readFileSync(file(), 'utf8'))
  fs.writeFileSync(file(), spoilt)
  await expect(kept({}, { trustAnew: true })).rejects.toThrow(/lan-authority\.json does not hold .*Put the file back/)
  expect(fs.readFileSync(file(), 'utf8')).toBe(spoilt)
})

function swapKey(text: string): string {
  const { privateKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' })
  const other = privateKey.export({ type: 'pkcs8', format: 'pem' })
  return JSON.stringify({ ...(JSON.parse(text) as object), key: other })
}
