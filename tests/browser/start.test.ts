import { execFileSync, spawnSync } from 'node:child_process'
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { expect, test as base } from '@playwright/test'
import { findFreePort, spawnStart, type Started } from '../support/spawn-start'

type Fixtures = { folder: string; port: number; start(env?: Record<string, string | undefined>, args?: string[], as?: { uid: number; gid: number }): Started }

const test = base.extend<Fixtures>({
   
  folder: async ({}, use) => {
    const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evendough-start-'))
    fs.chmodSync(folder, 0o755)
    await use(folder)
    fs.rmSync(folder, { recursive: true, force: true })
  },
   
  port: async ({}, use) => use(await findFreePort()),
  start: async ({ folder, port }, use) => {
    const started: Started[] = []
    await use((env = {}, args = [], as) => {
      const one = spawnStart({ PORT: String(port), EVENDOUGH_DATA: path.join(folder, 'data'), ...env }, args, as)
      started.push(one)
      return one
    })
    for (const one of started) {
      one.child.kill('SIGTERM')
      await one.ended
    }
  },
})

const setUpLink = /http:\/\/localhost:\d+\/set-up\/[\w-]{22}/
const ready = /Ctrl-C stops it/

/** Processes whose command line names the folder. */
function processesOf(folder: string): string[] {
  return execFileSync('ps', ['-eww', '-o', 'pid=,args='], { encoding: 'utf8' }).split('\n').filter((line) => line.includes(folder) && !line.includes('ps -eww'))
}

test('an empty install prints a link that opens the set-up page, and SIGTERM leaves nothing running', async ({ start, folder, port }) => {
  const one = start({}, ['--empty'])
  await one.until(ready)
  const [link] = await one.until(setUpLink)
  expect((await fetch(link)).status).toBe(200)
  expect(await (await fetch(link)).text()).toContain('Set up your bakery')
  one.child.kill('SIGTERM')
  expect(await one.ended).toBe(0)
  expect(processesOf(folder)).toEqual([])
  await expect(fetch(`http://localhost:${port}/sign-in`)).rejects.toThrow()
})

test('a start after kill -9 goes on with what was there, without help', async ({ start, folder, port }) => {
  const killed = start()
  await killed.until(ready)
  const [signIn] = await killed.until(/marit@osier-lane\.example {2}\S+/)
  killed.child.kill('SIGKILL')
  await killed.ended
  await expect.poll(() => fetch(`http://127.0.0.1:${port}/sign-in`).then(() => 'answers', () => 'gone')).toBe('gone')
  const again = start()
  await again.until(ready)
  expect((await again.until(/marit@osier-lane\.example {2}\S+/))[0]).toBe(signIn)
  expect(fs.statSync(path.join(folder, 'data', 'first-sign-in.txt')).mode & 0o777).toBe(0o600)
  expect(fs.statSync(path.join(folder, 'data', 'secrets.json')).mode & 0o777).toBe(0o600)
  again.child.kill('SIGTERM')
  expect(await again.ended).toBe(0)
  const real = start({}, ['--empty'])
  expect(await real.ended).toBe(1)
  expect(real.output().trim()).toMatch(/holds the invented bakery, and stays so/)
})

test('a second start on the same folder is refused in one line, and the first goes on', async ({ start }) => {
  const first = start({}, ['--empty'])
  await first.until(ready)
  const [link] = await first.until(setUpLink)
  const second = start({ PORT: String(await findFreePort()) }, ['--empty'])
  expect(await second.ended).toBe(1)
  expect(second.output().trim()).toMatch(/^\S+ is in use by another start of Evendough\. Stop that one, or choose another folder: EVENDOUGH_DATA=… npm start$/)
  expect((await fetch(link)).status).toBe(200)
})

test('too old a Node gets one line', () => {
  const old = spawnSync(process.execPath, ['-e', `import('./lib/ops/bootstrap.mjs').then((m) => m.mustHaveNode('18.20.4'))`], { encoding: 'utf8' })
  expect(old.status).toBe(1)
  expect(old.stderr.trim()).toBe('Evendough needs Node.js 20.19 or newer; this is 18.20.4. Install a current LTS release of Node.js, then run this again.')
})
