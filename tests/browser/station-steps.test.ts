import { v7 as uuid } from 'uuid'
import type { BrowserContext } from 'playwright/test'
import { takeEntries } from '../../lib/kitchen/intake/take-entries'
import { expect, test } from '../support/app'
import { callerOf, valueOf } from '../support/bakery'
import { enrolAndLogOn, logOn, openTablet, readyToRead } from '../support/tablet'

/** Notes in the page itself what is asked of the browser: a sound, and a screen that stays awake. */
async function watch(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    const asked = { beeps: 0, awake: 0 }
    Object.assign(window, { asked })
    const start = OscillatorNode.prototype.start
    OscillatorNode.prototype.start = function (...when) {
      asked.beeps += 1
      start.apply(this, when)
    }
    Object.defineProperty(navigator, 'wakeLock', {
      value: {
        request: () => {
          asked.awake += 1
          return Promise.resolve({
            released: false,
            release: () => {
              asked.awake -= 1
              return Promise.resolve()
            },
          })
        },
      },
    })
  })
}
declare const asked: { beeps: number; awake: number }

test('bulk runs from the stored time over a reload without a network, rings for anybody, and is silent for good', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, dough } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, tap, context, faults } = tablet
  await watch(context)
  await enrolAndLogOn(tablet, code)
  await context.setOffline(true)
  await tap(page.getByRole('button', { name: new RegExp(`^${dough.code}`) }))
  await tap(page.getByRole('button', { name: 'Begin mixing' }))
  await expect(page.getByText(/^Mixing: 0 of 10/)).toBeVisible()
  await page.clock.fastForward(8 * 60_000)
  await tap(page.getByRole('button', { name: 'Mixed: bulk begins' }))
  await expect(page.getByText(/^Bulk: 0 of 45/)).toBeVisible()
  expect(await page.evaluate(() => asked.awake)).toBe(1)

  // Ten minutes later nobody is on the tablet; what runs stays.
  await page.clock.fastForward(41 * 60_000)
  await expect(page.getByRole('heading', { name: 'Who is here?' })).toBeVisible()
  await expect(page.getByText(/^Bulk: 41 of 45/)).toBeVisible()
  await page.reload()
  await expect(page.getByText(/^Bulk: 41 of 45/)).toBeVisible()
  await expect(page.getByText('This browser makes no sound until somebody taps the screen.')).toBeVisible()
  await tap(page.getByText(/^Bulk: 41 of 45/))
  await expect(page.getByText('This browser makes no sound until somebody taps the screen.')).toBeHidden()

  await page.clock.fastForward(4 * 60_000)
  const rings = page.getByRole('alert').filter({ hasText: `Dough ${dough.code}, Bulk: time is up` })
  await expect(rings).toBeVisible()
  const flashing = () => rings.locator('p').evaluate((each) => getComputedStyle(each).animationName)
  expect(await flashing()).toBe('flash')
  await page.emulateMedia({ reducedMotion: 'reduce' })
  expect(await flashing()).toBe('none')
  await expect.poll(() => page.evaluate(() => asked.beeps)).toBeGreaterThan(0)
  expect(await page.evaluate(() => asked.awake)).toBe(1)

  // Nobody is on it, and anybody silences it.
  await tap(page.getByRole('button', { name: 'Silence' }))
  await expect(rings).toBeHidden()
  await expect(page.getByText(/^Bulk: 4[5-9] of 45/)).toBeVisible()
  await expect.poll(() => page.evaluate(() => asked.awake)).toBe(0)
  const beeps = await page.evaluate(() => asked.beeps)
  await page.clock.fastForward(10_000)
  expect(await page.evaluate(() => asked.beeps)).toBe(beeps)
  await page.reload()
  await expect(page.getByText(/^Bulk: 4[5-9] of 45/)).toBeVisible()
  await expect(rings).toBeHidden()
  expect(await page.evaluate(() => asked.awake)).toBe(0)

  await context.setOffline(false)
  await page.clock.fastForward(60_000)
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  const { rows } = await app.look.query(
    'SELECT step, is_done, person_id FROM step WHERE bakery_id = $1 AND batch_id = $2 ORDER BY at, step',
    [bakery.bakeryId, dough.batchId],
  )
  const by = { is_done: true, person_id: bakery.early.personId }
  expect(rows).toEqual([
    { step: 'mixing_begun', ...by },
    { step: 'mixed', ...by },
  ])
  expect(faults).toEqual([])
  await context.close()
})

test('a rest calls somebody to look from the stored time, over a reload and again, until it has waited longest', async ({
  app,
  bakery,
  browser,
}) => {
  await app.look.query('UPDATE bakery SET rest_look_min = 15, rest_most_min = 40 WHERE bakery_id = $1', [
    bakery.bakeryId,
  ])
  const { code, dough } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, tap, context, faults } = tablet
  await watch(context)
  await enrolAndLogOn(tablet, code)
  await context.setOffline(true)
  await tap(page.getByRole('button', { name: new RegExp(`^${dough.code}`) }))
  await tap(page.getByRole('button', { name: 'Another step' }))
  await tap(page.getByRole('button', { name: 'Pre-shaped: it rests' }))
  await tap(page.getByRole('button', { name: 'Keep it' }))
  await tap(page.getByRole('button', { name: 'All doughs' }))
  await expect(page.getByText(/^Rest: 0 of 15/)).toBeVisible()

  // Ten minutes later nobody is on the tablet.
  await page.clock.fastForward(16 * 60_000)
  await page.reload()
  const rings = page.getByRole('alert').filter({ hasText: `Dough ${dough.code}, Rest: look at it` })
  await expect(rings).toBeVisible()
  await tap(page.getByRole('button', { name: 'Silence' }))
  await expect(rings).toBeHidden()
  await page.reload()
  await expect(page.getByText(/^Rest: 1[67] of 15/)).toBeVisible()
  await expect(rings).toBeHidden()
  await tap(page.getByText(/^Rest: 1[67] of 15/))
  await page.clock.fastForward(15 * 60_000)
  await expect(rings).toBeVisible()
  await expect.poll(() => page.evaluate(() => asked.beeps)).toBeGreaterThan(0)
  await page.clock.fastForward(10 * 60_000)
  const longest = page.getByRole('alert').filter({ hasText: `Dough ${dough.code}, Rest: the longest wait is over` })
  await expect(longest).toBeVisible()
  await tap(page.getByRole('button', { name: 'Silence' }))
  await expect(longest).toBeHidden()
  await page.clock.fastForward(60 * 60_000)
  await expect(longest).toBeHidden()
  expect(faults).toEqual([])
  await context.close()
})

test('a tablet whose clock is an hour ahead shows what another one entered, and is put right in the book', async ({
  app,
  bakery,
  browser,
  as,
}) => {
  const { code, dough } = await readyToRead(bakery)
  const now = new Date()
  const takenAt = new Date(now.getTime() - 60_000).toISOString()
  const step = { kind: 'step', id: uuid(), batchId: dough.batchId, step: 'mixed', isDone: true, agoS: 0, takenAt }
  valueOf(await takeEntries.call(callerOf(bakery.early.sessionSecret, now), { entries: [step] }))
  const tablet = await openTablet(browser, app.url)
  const { page, tap, context, faults } = tablet
  await page.clock.setSystemTime(new Date(now.getTime() + 3_600_000))
  await enrolAndLogOn(tablet, code)
  // The dough was begun just now, and no step of it was before that.
  await expect(page.getByText(/^Bulk: [01] of 45/)).toBeVisible()
  await tap(page.getByRole('button', { name: new RegExp(`^${dough.code}.*Bulk`) }))
  await tap(page.getByRole('button', { name: 'Another step' }))
  await tap(page.getByRole('button', { name: 'Into the oven' }))
  await page.getByLabel('Deck and place').fill(' Deck 2, left ')
  await page.getByLabel('Oven as set, °C').fill('600')
  await page.getByLabel('Oven as read, °C').fill('228,5')
  await tap(page.getByRole('button', { name: 'With steam' }))
  await tap(page.getByRole('button', { name: 'Keep it' }))
  await expect(page.getByText(/between −40.*500/)).toBeVisible()
  await page.reload()
  await expect(page.getByLabel('Deck and place')).toHaveValue(' Deck 2, left ')
  await page.getByLabel('Oven as set, °C').fill('230')
  await tap(page.getByRole('button', { name: 'Keep it' }))
  await expect(page.getByText(/^Baking: 0 of 30/)).toBeVisible()
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  const { rows } = await app.look.query(
    `SELECT place, set_temp_c, read_temp_c, steam, beside, clock_ahead_s BETWEEN -3700 AND -3500 AS knew,
       received_at - at < interval '2 minutes' AS near FROM step WHERE bakery_id = $1 AND step = 'in_oven'`,
    [bakery.bakeryId],
  )
  expect(rows).toEqual([
    { place: 'Deck 2, left', set_temp_c: 230, read_temp_c: 228.5, steam: true, beside: null, knew: true, near: true },
  ])

  // It was entered by mistake: the slip is put right with a reason, and bulk runs on.
  await tap(page.getByRole('button', { name: /into the oven/ }))
  await tap(page.getByRole('button', { name: 'It was not done' }))
  await tap(page.getByRole('button', { name: 'Tapped by mistake' }))
  await expect(page.getByText(/^Bulk: [0-4] of 45/)).toBeVisible()
  await expect(page.getByText('Everything is in the book')).toBeVisible()

  const desk = await as(bakery.head)
  await desk.goto(`/shift/${dough.batchId}`)
  const done = desk.locator('#process')
  await expect(done.getByText(/^Bulk: until/)).toBeVisible()
  await expect(done.getByText('mixed')).toBeVisible()
  await expect(done.getByText('into the oven')).toHaveCount(0)
  await desk.goto('/shift')
  await expect(desk.getByText(/^Bulk: until/)).toBeVisible()
  expect(faults).toEqual([])
  await context.close()
})

test('who logs on finds the board, and opens the dough that it is of', async ({ app, bakery, browser }) => {
  const { code, dough } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, tap, context } = tablet
  await enrolAndLogOn(tablet, code)
  await tap(page.getByRole('button', { name: new RegExp(`^${dough.code}`) }))
  await tap(page.getByRole('button', { name: 'Begin mixing' }))
  await tap(page.getByRole('button', { name: 'All doughs' }))
  await expect(page.getByText('Next: out of the mixer, into bulk')).toBeVisible()
  await tap(page.getByRole('button', { name: 'Log off' }))
  await expect(page.getByRole('heading', { name: 'Who is here?' })).toBeVisible()
  await expect(page.getByText(/^Mixing: 0 of 10/)).toBeVisible()
  await expect(page.getByRole('button', { name: /Mixing: 0 of 10/ })).toHaveCount(0)
  await logOn(tablet)
  await tap(page.getByRole('button', { name: /Mixing: 0 of 10/ }))
  await expect(page.getByRole('heading', { name: `Dough ${dough.code}` })).toBeVisible()
  await context.close()
})

test('a dough that is taken out of the oven without a network is baked from then on, here at once and later in the book', async ({
  app,
  as,
  bakery,
  browser,
}) => {
  const { code, dough } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, tap, context } = tablet
  await enrolAndLogOn(tablet, code)
  await context.setOffline(true)
  const inList = page.getByRole('button', { name: new RegExp(`^${dough.code}`) })
  await expect(inList).toContainText('being weighed out')
  await tap(inList)
  await tap(page.getByRole('button', { name: 'Another step' }))
  await tap(page.getByRole('button', { name: 'Out of the oven' }))
  await tap(page.getByRole('button', { name: /^Keep/ }))
  await tap(page.getByRole('button', { name: 'All doughs' }))
  await expect(inList).toContainText('baked')
  await expect(inList).toContainText('Loaf weight: due from')
  await page.reload()
  await expect(inList).toContainText('Loaf weight: due from')

  await context.setOffline(false)
  await page.clock.fastForward(61_000)
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  const { rows } = await app.look.query<{ state: string; since_step: boolean }>(
    `SELECT state, baked_at = step.at AS since_step FROM batch JOIN step ON step.batch_id = batch.id WHERE batch.id = $1`,
    [dough.batchId],
  )
  expect(rows).toEqual([{ state: 'baked', since_step: true }])
  const desk = await as(bakery.early)
  await desk.goto(`/shift/${dough.batchId}`)
  await expect(desk.getByText('Out of the oven').first()).toBeVisible()
  await context.close()
})
