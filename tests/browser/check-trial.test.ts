import { execFile } from 'node:child_process'
import fs from 'node:fs'
import path from 'node:path'
import { promisify } from 'node:util'
import { cookieOf, expect, test } from '../support/app'
import { makeEndedTrial } from '../support/ended-trial'

const root = path.resolve(import.meta.dirname, '..', '..')
const run = promisify(execFile)

test('a result is checked by a button, and its file elsewhere, without any book', async ({ as, bakery }, info) => {
  test.setTimeout(120_000)
  const { trialId } = await makeEndedTrial(bakery, { now: new Date() })
  const page = await as(bakery.early)
  await page.goto(`/trials/${trialId}/result`)
  await page.getByRole('link', { name: 'Check this trial' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Everything that can be checked agrees')
  await expect(page.getByRole('row', { name: /every figure, worked out again/ })).toContainText('agrees')
  await expect(page.getByRole('row', { name: /the costs, worked out again/ })).toContainText('left out')

  const coming = page.waitForEvent('download')
  await page.getByRole('link', { name: 'evidence.json' }).click()
  const file = info.outputPath('evidence.json')
  await (await coming).saveAs(file)
  const verify = (...args: string[]) =>
    run(process.execPath, ['lib/ops/run-script.mjs', 'verify', 'verify', ...args], { cwd: root })
  const { stdout } = await verify(file)
  expect(stdout).toContain('agrees\tevery figure, worked out again\n')
  expect(stdout).not.toContain('does not agree')

  // A reading in it changed: it says so, at the figure that does not come out, and ends with another status.
  fs.writeFileSync(file, fs.readFileSync(file, 'utf8').replace(/(\\"valueEntered\\":\\")\d/, '$19'))
  await expect(verify(file)).rejects.toMatchObject({ code: 1, stdout: expect.stringContaining('does not agree') })
  await expect(verify()).rejects.toMatchObject({ code: 2 })
  await expect(verify(file, '--anchor', 'x')).rejects.toMatchObject({ code: 2 })
  await expect(verify(info.outputPath('none.json'))).rejects.toMatchObject({ code: 2 })
})

test('the file is nobody’s who is not signed in, and no other bakery’s', async ({ app, bakery }) => {
  const { trialId } = await makeEndedTrial(bakery, { now: new Date() })
  const ask = async (id: string, isSignedIn: boolean) => {
    const { name, value } = await cookieOf(bakery.early.sessionSecret, app.url)
    return fetch(`${app.url}/trials/${id}/check/file`, {
      redirect: 'manual',
      headers: isSignedIn ? { Cookie: `${name}=${value}` } : {},
    })
  }
  expect((await ask(trialId, false)).status).toBe(401)
  const found = await ask(trialId, true)
  expect(found.status).toBe(200)
  expect(found.headers.get('content-disposition')).toMatch(/^attachment; filename="trial-\d+-evidence\.json"$/)
  expect(found.headers.get('cache-control')).toContain('no-store')
  expect((await ask('019a0000-0000-7000-8000-000000000001', true)).status).toBe(404)
  expect((await ask('x', true)).status).toBe(404)
})
