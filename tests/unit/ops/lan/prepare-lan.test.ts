import { X509Certificate } from 'node:crypto'
import fs from 'node:fs'
import http from 'node:http'
import https from 'node:https'
import net, { type AddressInfo } from 'node:net'
import os from 'node:os'
import path from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { frontFacts } from '../../../../lib/kitchen/stations/front-facts'
import { findFreePort } from '../../../../lib/ops/find-free-port'
import { prepareLan } from '../../../../lib/ops/lan/prepare-lan'

const machine = { hostname: 'oven', interfaces: os.networkInterfaces() }

let folder: string
let env: Record<string, string>
const prepare = (change: Record<string, string> = {}) =>
  prepareLan({ ...env, ...change } as unknown as NodeJS.ProcessEnv, machine, folder, {
    trustAnew: false,
    now: new Date(),
  })

beforeEach(async () => {
  folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evendough-lan-'))
  env = {
    EVENDOUGH_LAN_NAME: 'kitchen.test',
    EVENDOUGH_LAN_ADDRESSES: '127.0.0.1',
    EVENDOUGH_LAN_PORT: String(await findFreePort()),
    EVENDOUGH_LAN_TRUST_PORT: String(await findFreePort()),
  }
})
afterEach(() => fs.rmSync(folder, { recursive: true }))

it.each(['EVENDOUGH_LAN_PORT', 'EVENDOUGH_LAN_TRUST_PORT'])(
  'a taken %s is said with the setting that chooses another, and no authority is made for nothing',
  async (setting) => {
    const taken = net.createServer()
    await new Promise<void>((resolve) => taken.listen(0, '127.0.0.1', resolve))
    const { port } = taken.address() as AddressInfo
    await expect(prepare({ [setting]: String(port) })).rejects.toThrow(
      `Port ${port} is in use. Stop what uses it, or choose another: ${setting}=${port + 1} npm start`,
    )
    expect(fs.readdirSync(folder)).toEqual([])
    taken.close()
  },
)

it('tells the app of the very certificate that it shows, opens only when it is told to, and closes whole', async () => {
  const app = http.createServer((request, response) => response.end(String(request.headers['x-evendough-front'])))
  await new Promise<void>((resolve) => app.listen(0, '127.0.0.1', resolve))
  const lan = await prepare()
  const facts = frontFacts(lan.forApp)
  expect(facts?.origin).toBe(lan.origin)
  const { certificate } = JSON.parse(fs.readFileSync(path.join(folder, 'lan-authority.json'), 'utf8')) as {
    certificate: string
  }
  expect(facts?.certificate.fingerprint).toBe(new X509Certificate(certificate).fingerprint256)
  const greeting = await lan.greeting(false)
  expect(greeting).toContain(facts?.certificate.fingerprint)
  expect((await lan.greeting(true)).endsWith(greeting)).toBe(true)
  expect(await lan.greeting(true)).not.toBe(greeting)

  const ask = () =>
    new Promise<string>((resolve, reject) => {
      https
        .get(
          {
            host: '127.0.0.1',
            port: env.EVENDOUGH_LAN_PORT,
            servername: 'kitchen.test',
            ca: certificate,
            agent: false,
            headers: { host: new URL(lan.origin).host },
          },
          (response) => {
            let text = ''
            response.on('data', (chunk: Buffer) => (text += chunk.toString()))
            response.on('end', () => resolve(text))
          },
        )
        .on('error', reject)
    })
  await expect(ask()).rejects.toMatchObject({ code: 'ECONNREFUSED' })
  const close = await lan.open((app.address() as AddressInfo).port)
  const secret = await ask()
  expect(secret).toBe(lan.forApp.EVENDOUGH_FRONT_SECRET)
  expect(secret).toHaveLength(43)
  expect((await fetch(facts?.trustAddresses[0] ?? '')).status).toBe(200)
  await close()
  await expect(ask()).rejects.toMatchObject({ code: 'ECONNREFUSED' })
  await expect(fetch(facts?.trustAddresses[0] ?? '')).rejects.toThrow()
  app.close()
})
