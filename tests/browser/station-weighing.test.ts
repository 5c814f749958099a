import { v7 as uuid } from 'uuid'
import { moveBatch } from '../../lib/kitchen/shifts/move-batch'
import { expect, test, type App } from '../support/app'
import { callerOf, valueOf, type TestBakery } from '../support/bakery'
import { putFormerStore, readStore } from '../support/former-store'
import { givePin, testPin } from '../support/stations'
import {
  enrolAndLogOn,
  keepNumber,
  openPlace,
  openTablet,
  readyToRead,
  tabletIn,
  typeNumber,
  typePin,
  type Tablet,
  untilDraft,
} from '../support/tablet'

async function weighingsOf(app: App, batchId: string) {
  const { rows } = await app.look.query<{ name: string; how: string; mass: string | null; reason: string | null }>(
    `SELECT ingredient.label_name AS name, weighing.how, mass_entered AS mass, reason FROM weighing
     JOIN ingredient ON ingredient.bakery_id = weighing.bakery_id AND ingredient.id = weighing.ingredient_id
     WHERE batch_id = $1 ORDER BY weighing.received_at, weighing.taken_at`,
    [batchId],
  )
  return rows.map(({ name, how, mass, reason }) => [name, how, mass, ...(reason === null ? [] : [reason])])
}

/** Puts the control, or the other dough, which has milk, on the tablet with its weights open. */
async function openWeights({ page, tap }: Tablet, code: string): Promise<void> {
  await tap(page.getByRole('button', { name: new RegExp(`^${code}`) }))
  await tap(page.getByRole('button', { name: 'Open the weights' }))
  await page.getByRole('heading', { name: `Weigh out dough ${code}` }).waitFor()
}

/** Everything that lies in the tablet's store. */
async function storedOn({ page }: Tablet): Promise<string> {
  return page.evaluate(async () => {
    const texts: string[] = []
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const opening = indexedDB.open('evendough-station')
      opening.onsuccess = () => resolve(opening.result)
      opening.onerror = () => reject(new Error('the store does not open'))
    })
    for (const store of database.objectStoreNames) {
      const all = database.transaction(store).objectStore(store).getAll()
      await new Promise((resolve) => (all.onsuccess = resolve))
      texts.push(JSON.stringify(all.result))
    }
    database.close()
    return texts.join('\n')
  })
}

async function addScale(app: App, bakery: TestBakery, name: string, stepG: number, mostG: number): Promise<void> {
  await app.look.query(
    `INSERT INTO equipment (bakery_id, id, kind, name, most_g, resolution_g, note, revision, created_at)
     VALUES ($1, $2, 'scale', $3, $4, $5, '', 1, now())`,
    [bakery.bakeryId, uuid(), name, mostG, stepG],
  )
}

test('a dough is begun and weighed whole: ticked where every dough has the same, over and under said in grams', async ({
  app,
  bakery,
  browser,
}) => {
  test.setTimeout(120_000)
  const { code, trial } = await readyToRead(bakery)
  // The second dough has milk powder; the control, which was begun at the desk, has none.
  const [control, milky] = trial.batches
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  await tap(page.getByRole('button', { name: `Begin dough ${milky!.code}` }))
  await expect(page.getByText('It stands in the record that you know it')).toBeVisible()
  await tap(page.getByRole('button', { name: 'Open the weights' }))
  await expect(page.getByText('5 of 5 lines left')).toBeVisible()
  await tap(page.getByRole('button', { name: /^Next: Wheat flour/ }))
  await expect(page.getByText(/^Line 1 of 5/)).toBeVisible()
  await expect(page.getByText(/^1,163\.6\sg \(1,152\.\d to 1,175\.\d\sg\)$/)).toBeVisible()
  await tap(page.getByRole('button', { name: 'As planned' }))

  // Water: too much is said while it is typed, and kept only after somebody says that it cannot be changed.
  await expect(page.getByText(/^Line 2 of 5/)).toBeVisible()
  await typeNumber(tablet, '733.5')
  await expect(page.getByText(/^12\.\d\sg too much: take it out\.$/)).toBeVisible()
  await tap(page.getByRole('button', { name: 'Keep 733.5 g' }))
  await expect(page.getByRole('alert').filter({ hasText: 'too much: take it out' })).toBeVisible()
  await tap(page.getByRole('button', { name: 'Weigh again' }))
  await expect(page.locator('.typed')).toHaveText('…g')
  await keepNumber(tablet, '700')
  await expect(page.getByText(/^21\.\d\sg too little: add it\.$/)).toBeVisible()
  await tap(page.getByRole('button', { name: 'It cannot be changed: keep 700 g' }))

  // Back and forth over the lines; what was passed over comes again.
  await expect(page.getByText(/^Line 3 of 5/)).toBeVisible()
  await tap(page.getByRole('button', { name: 'Next line' }))
  await expect(page.getByText(/^Line 4 of 5/)).toBeVisible()
  await tap(page.getByRole('button', { name: 'As planned' }))
  await expect(page.getByText(/^Line 5 of 5/)).toBeVisible()
  // What the doughs differ in is never ticked.
  await expect(page.getByRole('button', { name: 'As planned' })).toHaveCount(0)
  await typeNumber(tablet, '11.6')
  await expect(page.getByText('It is within what is allowed.')).toBeVisible()
  await tap(page.getByRole('button', { name: 'Keep 11.6 g' }))
  await expect(page.getByText(/^Line 3 of 5/)).toBeVisible()
  await tap(page.getByRole('button', { name: 'As planned' }))
  await expect(page.getByText('Every line is written.')).toBeVisible()
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  await expect
    .poll(() => weighingsOf(app, milky!.batchId))
    .toEqual([
      ['Wheat flour', 'ticked', null],
      ['Water', 'weighed', '700'],
      ['Yeast', 'ticked', null],
      ['Milk powder', 'weighed', '11.6'],
      ['Salt', 'ticked', null],
    ])

  // A slip of one's own is put right at once, with what stood there kept.
  await tap(page.getByRole('button', { name: /^Water/ }))
  await tap(page.getByRole('button', { name: 'Put it right' }))
  await expect(page.getByText(/^Line 2 of 5/)).toBeVisible()
  await keepNumber(tablet, '721')
  await expect(page.getByText('Every line is written.')).toBeVisible()
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  await expect
    .poll(async () => (await weighingsOf(app, milky!.batchId)).at(-1))
    .toEqual(['Water', 'weighed', '721', 'Own slip, put right at once'])

  // Of the control none goes in: that is written too, at one tap.
  await tap(page.getByRole('button', { name: 'Back to the dough' }))
  await tap(page.getByRole('button', { name: 'All doughs' }))
  await openWeights(tablet, control!.code)
  await tap(page.getByRole('button', { name: /^Milk powder/ }))
  await expect(page.getByText('None of it goes into this dough.')).toBeVisible()
  await tap(page.getByRole('button', { name: 'Keep: none of it' }))
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  await expect.poll(() => weighingsOf(app, control!.batchId)).toEqual([['Milk powder', 'left_out', null]])
  const { rows } = await app.look.query(
    `SELECT 1 FROM audit_entry WHERE bakery_id = $1 AND action = 'shifts.open-dough-key' AND by = 'station'`,
    [bakery.bakeryId],
  )
  expect(rows).toHaveLength(2)
  expect(tablet.faults).toEqual([])
  await context.close()
})

test('the network goes in the middle and the page is loaded anew: every line is in the book once', async ({
  app,
  bakery,
  browser,
}) => {
  test.setTimeout(120_000)
  const { code, dough } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url, { width: 810, height: 1080 })
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  await page.evaluate(() => navigator.serviceWorker.ready)
  await openWeights(tablet, dough.code)
  await tap(page.getByRole('button', { name: /^Next: Wheat flour/ }))
  await tap(page.getByRole('button', { name: 'As planned' }))
  // The next line comes up with what was kept: before that, nothing waited yet either.
  await expect(page.getByText(/^Line 2 of 5/)).toBeVisible()
  await expect(page.getByText('Everything is in the book')).toBeVisible()

  await context.setOffline(true)
  await typeNumber(tablet, '72')
  await untilDraft(page, '72')
  await page.reload()
  // Half typed, at its line, on a tablet that has no network.
  await expect(page.getByText(/^Line 2 of 5/)).toBeVisible()
  await expect(page.locator('.typed')).toContainText('72')
  await keepNumber(tablet, '1.5')
  await expect(page.getByText(/^Line 3 of 5/)).toBeVisible()
  await tap(page.getByRole('button', { name: 'As planned' }))
  await expect(page.getByText('2 on this tablet, not sent yet')).toBeVisible()
  await page.reload()
  await tap(page.getByRole('button', { name: 'As planned' }))
  await tap(page.getByRole('button', { name: 'Keep: none of it' }))
  await expect(page.getByText('Every line is written.')).toBeVisible()
  await expect(page.locator('.stood').filter({ hasText: 'on this tablet' })).toHaveCount(4)
  expect(await weighingsOf(app, dough.batchId)).toHaveLength(1)

  // The first answer is lost on its way back, the second one is not the book's.
  let answers = 0
  await context.route('**/api/v1/entries', async (route) => {
    answers += 1
    if (answers > 2) return route.continue()
    if (answers === 2) return route.fulfill({ status: 200, contentType: 'text/html', body: '<h1>Welcome</h1>' })
    await route.fetch()
    return route.abort()
  })
  await context.setOffline(false)
  await expect(async () => {
    await page.clock.fastForward(61_000)
    await expect(page.getByText('Everything is in the book')).toBeVisible({ timeout: 1_000 })
  }).toPass()
  expect(answers).toBeGreaterThan(2)
  expect((await weighingsOf(app, dough.batchId)).sort()).toEqual([
    ['Milk powder', 'left_out', null],
    ['Salt', 'ticked', null],
    ['Water', 'weighed', '721.5'],
    ['Wheat flour', 'ticked', null],
    ['Yeast', 'ticked', null],
  ])
  expect(tablet.faults).toEqual([])
  await context.close()
})

test('weights are for who opened them, also without a network, and leave the tablet when the dough is baked', async ({
  app,
  bakery,
  browser,
}) => {
  test.setTimeout(120_000)
  const { code, dough } = await readyToRead(bakery)
  await givePin(bakery.head, testPin, new Date())
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  await page.evaluate(() => navigator.serviceWorker.ready)
  await openWeights(tablet, dough.code)
  await tap(page.getByRole('button', { name: /^Next: Wheat flour/ }))
  await tap(page.getByRole('button', { name: 'As planned' }))
  await expect(page.getByText('Everything is in the book')).toBeVisible()

  const logHeadOn = async () => {
    await tap(page.getByRole('button', { name: 'Change' }))
    await tap(page.getByRole('button', { name: /^Henk/ }))
    await page.getByRole('heading', { name: 'PIN of Henk' }).waitFor()
    await typePin(tablet)
    await page.getByText('On it: Henk').waitFor()
  }
  await logHeadOn()
  await expect(page.getByRole('button', { name: 'Open the weights' })).toBeVisible()
  await tap(page.getByRole('button', { name: 'Kept here' }))
  await expect(page.locator('.lying')).toContainText(/Wheat flour \w+: written/)
  await tap(page.getByRole('button', { name: 'Back', exact: true }))
  await context.setOffline(true)
  await tap(page.getByRole('button', { name: 'Open the weights' }))
  await expect(page.getByText('The weights of this dough are not on this tablet for you yet.')).toBeVisible()
  await expect(page.getByText(/1,163\.6|Wheat flour/)).toHaveCount(0)
  await context.setOffline(false)
  await tap(page.getByRole('button', { name: 'Open the weights' }))
  await tap(page.getByRole('button', { name: /^Wheat flour/ }))
  // The head baker corrects somebody else's, for a reason and under the PIN of just now.
  await tap(page.getByRole('button', { name: 'Put it right' }))
  await tap(page.getByRole('button', { name: 'Weighed anew before mixing' }))
  await keepNumber(tablet, '1164')
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  await expect
    .poll(() => weighingsOf(app, dough.batchId))
    .toEqual([
      ['Wheat flour', 'ticked', null],
      ['Wheat flour', 'weighed', '1164', 'Weighed anew before mixing'],
    ])
  const { rows } = await app.look.query<{ name: string }>(
    `SELECT person.name FROM opened_dough_key AS opened JOIN person ON person.id = opened.person_id
     WHERE opened.batch_id = $1 ORDER BY opened.at`,
    [dough.batchId],
  )
  expect(rows.map(({ name }) => name)).toEqual(['Esi', 'Henk'])
  expect(await storedOn(tablet)).toContain('apartG')

  const early = callerOf(bakery.early.sessionSecret, new Date())
  for (const [at, to] of [
    [2, 'in_work'],
    [3, 'baked'],
  ] as const)
    valueOf(await moveBatch.call(early, { batchId: dough.batchId, seenRevision: at, to }))
  await page.clock.fastForward(31_000)
  await expect.poll(() => storedOn(tablet)).not.toContain('apartG')
  expect(tablet.faults).toEqual([])
  await context.close()
})

test('a scale is swapped in the middle: what is left goes on the other, in its steps and by its tolerance', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, dough } = await readyToRead(bakery)
  await addScale(app, bakery, 'Shop scale', 5, 6000)
  await addScale(app, bakery, 'Letter scale', 0.1, 200)
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  await openWeights(tablet, dough.code)
  await tap(page.getByRole('button', { name: /^Next: Wheat flour/ }))
  await tap(page.getByRole('button', { name: 'As planned' }))
  await expect(page.getByText(/^Line 2 of 5/)).toBeVisible()
  await tap(page.getByRole('button', { name: 'Next line' }))
  await expect(page.getByText(/^20\.9\sg \(20\.7 to 21\.1\sg\)$/)).toBeVisible()
  await tap(page.getByRole('button', { name: 'Another scale' }))
  await tap(page.getByRole('button', { name: /^Shop scale/ }))
  await expect(page.getByText(/on: Shop scale$/)).toBeVisible()
  await expect(page.getByText(/^20\sg \(20 to 25\sg\)$/)).toBeVisible()
  await expect(page.getByText(/^The plan allows 0\.2\sg here/)).toBeVisible()
  await typeNumber(tablet, '25')
  await expect(page.getByText('This scale shows it no closer.')).toBeVisible()
  // Nobody sees on it that it is as planned.
  await expect(page.getByRole('button', { name: 'As planned' })).toHaveCount(0)
  await tap(page.getByRole('button', { name: 'Keep 25 g' }))
  await expect(page.getByText(/^Line 4 of 5/)).toBeVisible()
  // It holds for the lines that are left, over a reload, and one that was weighed stays as it was.
  await page.reload()
  await expect(page.getByText(/on: Shop scale$/)).toBeVisible()
  await tap(page.getByRole('button', { name: 'All lines' }))
  await expect(page.getByText('On: Shop scale')).toHaveCount(3)
  await tap(page.getByRole('button', { name: /^Next: Water/ }))
  await tap(page.getByRole('button', { name: 'Another scale' }))
  await tap(page.getByRole('button', { name: /^Letter scale/ }))
  await expect(page.getByText(/^This scale carries 200\sg at most\.$/)).toBeVisible()
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  await expect
    .poll(() => weighingsOf(app, dough.batchId))
    .toEqual([
      ['Wheat flour', 'ticked', null],
      ['Salt', 'weighed', '25'],
    ])
  expect(tablet.faults).toEqual([])
  await context.close()
})

test('a newer build of the store keeps what waits to be sent, with its draft', async ({ app, bakery, browser }) => {
  const { code, dough } = await readyToRead(bakery)
  const before = await openTablet(browser, app.url)
  await enrolAndLogOn(before, code)
  await before.context.setOffline(true)
  await openPlace(before, dough.code, 'Dough temperature', 'Whole dough')
  await keepNumber(before, '26.4')
  await before.tap(
    before.page.locator('section').filter({ hasText: 'Water added' }).getByRole('button', { name: 'Whole dough' }),
  )
  await typeNumber(before, '81')
  await untilDraft(before.page, '81')
  await expect(before.page.locator('.strip')).toContainText('1 on this tablet, not sent yet')
  const rows = await readStore(before.page)
  const storageState = await before.context.storageState()
  // What lies there is put back below, so that this one must be gone: else it sends when it hears of the network.
  await before.context.close()

  const context = await browser.newContext({ baseURL: app.url, hasTouch: true, storageState })
  await context.route('**/api/v1/**', (route) => route.abort())
  const tablet = await tabletIn(context)
  const { page } = tablet
  await page.goto('/icon.svg')
  await putFormerStore(page, rows, 2)
  await page.goto('/station')
  await expect(page.locator('body')).toContainText('1 on this tablet, not sent yet')
  await context.unroute('**/api/v1/**')
  await page.clock.fastForward(61_000)
  await expect(page.locator('body')).toContainText('Everything is in the book')
  await expect(page.locator('.typed')).toContainText('81')
  const kept = await app.look.query(`SELECT value_entered FROM reading WHERE batch_id = $1`, [dough.batchId])
  expect(kept.rows).toEqual([{ value_entered: '26.4' }])
  expect([...before.faults, ...tablet.faults]).toEqual([])
  await context.close()
})
