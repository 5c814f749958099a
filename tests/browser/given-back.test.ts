import { execFileSync } from 'node:child_process'
import fs from 'node:fs'
import path from 'node:path'
import { expect } from 'playwright/test'
import { closeDb, db } from '../../lib/db/client'
import { makeBakery } from '../support/bakery'
import { lookInto } from '../support/look-into'
import { ready, test } from '../support/start'
import { enrolAndLogOn, keepNumber, openPlace, openTablet, readyToRead } from '../support/tablet'

/** As somebody copies a stopped folder, with whose files they are. */
const copy = (from: string, to: string) => execFileSync('cp', ['-a', from, to])

test('what an older copy of the data folder lacks comes back from the tablet that was told it is in the book', async ({
  browser,
  start,
  folder,
  port,
}) => {
  test.setTimeout(300_000)
  const [data, older] = [path.join(folder, 'data'), path.join(folder, 'older')]
  let one = start({}, ['--empty'])
  const stop = async () => {
    await closeDb()
    one.child.kill('SIGTERM')
    await one.ended
  }
  const startAgain = async () => {
    one = start({}, ['--empty'])
    await one.until(ready)
    lookInto(data)
  }
  await one.until(ready)
  lookInto(data)
  const { code, dough } = await readyToRead(await makeBakery('Mill Row', new Date()))
  const readings = async () =>
    (await db().reading.findMany({ orderBy: { receivedAt: 'asc' }, select: { id: true, valueEntered: true } })).map(
      ({ id, valueEntered }) => `${id} ${valueEntered}`,
    )

  const tablet = await openTablet(browser, `http://localhost:${port}`)
  const { page, tap } = tablet
  await enrolAndLogOn(tablet, code)
  await page.evaluate(() => navigator.serviceWorker.ready)
  await openPlace(tablet, dough.code, 'Dough temperature', 'Whole dough')
  await keepNumber(tablet, '26.4')
  await expect(page.locator('.stood').filter({ hasText: '26.4' })).toContainText('in the book')
  await stop()
  copy(data, older)

  const allInBook = async () => {
    await expect(async () => {
      await page.clock.fastForward(61_000)
      await expect(page.getByText('Everything is in the book')).toBeVisible({ timeout: 1_000 })
      await expect(page.getByText('Online')).toBeVisible({ timeout: 1_000 })
    }).toPass()
  }
  await startAgain()
  expect(one.output()).not.toContain('put back from a copy')
  await tap(page.getByRole('button', { name: 'All doughs' }))
  await openPlace(tablet, dough.code, 'Water added', 'Whole dough')
  await keepNumber(tablet, '812')
  await allInBook()
  const before = await readings()
  expect(before.map((each) => each.split(' ')[1])).toEqual(['26.4', '812'])
  await stop()

  fs.rmSync(data, { recursive: true })
  copy(older, data)
  await startAgain()
  expect(one.output()).toContain('put back from a copy')
  expect(await readings()).toEqual(before.slice(0, 1))
  await expect(async () => {
    await page.clock.fastForward(61_000)
    expect(await readings()).toEqual(before)
  }).toPass()
  await allInBook()
  expect(await readings()).toEqual(before)
  await tablet.context.close()
  await stop()
})
