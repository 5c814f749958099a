import type { Page } from 'playwright/test'
import { changeSettings } from '../../lib/kitchen/people/change-settings'
import { draftTrial } from '../../lib/kitchen/trials/draft-trial'
import { cookieOf, expect, test } from '../support/app'
import { callerOf, valueOf, type TestPerson } from '../support/bakery'
import { chooseIngredient } from '../support/choose-ingredient'
import { holdScripts } from '../support/hold-scripts'
import { makeApprovedTrial } from '../support/approved-trial'
import { makeTrialStores, trialContentOf } from '../support/trials'
import { walkReading } from '../support/walks/shift'

const back = 'stands in the fields again'
/** Everything that the page's browser keeps of forms. */
const keptTexts = (page: Page) =>
  page.evaluate(() => Object.entries(localStorage).map(([key, value]) => `${key} ${String(value)}`))
const isKept = (page: Page, text: string) =>
  expect.poll(async () => (await keptTexts(page)).some((kept) => kept.includes(text))).toBe(true)

test('a trial half typed is there after a reload, on the way back and after a crash, with its added doughs, until it is sent', async ({
  as,
  bakery,
  app,
}) => {
  const stores = await makeTrialStores(bakery, new Date())
  const page = await as(bakery.early)
  await page.goto('/trials/new')
  await page.getByLabel('Question', { exact: true }).fill('Does the yoghurt earn its place?')
  await page.getByLabel('Formula').selectOption(stores.formulaId)
  await page.getByLabel('Name').first().fill('with yoghurt')
  await chooseIngredient(page.getByRole('combobox', { name: 'Ingredient', exact: true }), 'Yoghurt')
  await page.getByLabel('Dose', { exact: true }).fill('8')
  await page.getByRole('button', { name: 'Add a test dough' }).click()
  await page.getByLabel('Name').nth(1).fill('half typed')
  await page.reload()
  const holds = async (at: Page) => {
    await expect(at.getByText(back)).toBeVisible()
    await expect(at.getByLabel('Question', { exact: true })).toHaveValue('Does the yoghurt earn its place?')
    await expect(at.getByLabel('Formula')).toHaveValue(stores.formulaId)
    await expect(at.getByLabel('Ingredient', { exact: true }).first()).toHaveValue('Yoghurt')
    await expect(at.getByLabel('Dose', { exact: true }).first()).toHaveValue('8')
    await expect(at.getByLabel('Name').nth(1)).toHaveValue('half typed')
  }
  await holds(page)
  await page.getByRole('link', { name: 'Stores' }).first().click()
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Stores')
  await page.goBack()
  await holds(page)
  // Another window of the same browser, with the first one gone.
  const other = await page.context().newPage()
  await page.close()
  await other.goto('/trials/new')
  await holds(other)

  // Somebody else at the same browser sees nothing of it.
  await signInAs(other, bakery.late, app.url)
  await other.goto('/trials/new')
  await expect(other.getByLabel('Question', { exact: true })).toHaveValue('')
  await expect(other.getByText(back)).toBeHidden()

  await signInAs(other, bakery.early, app.url)
  await other.goto('/trials/new')
  await holds(other)
  await other
    .getByRole('button', { name: /^Take .*out$/ })
    .last()
    .click()
  await other.getByLabel('Tap water, cold').fill('12')
  await other.getByRole('button', { name: 'Keep the draft' }).click()
  await expect(other.getByRole('heading', { level: 1 })).toContainText('Does the yoghurt earn its place?')
  await other.goto('/trials/new')
  await expect(other.getByLabel('Question', { exact: true })).toHaveValue('')
  await expect(other.getByText(back)).toBeHidden()
})

test('lines of a formula come back with their totals, and are gone after starting afresh', async ({ as, bakery }) => {
  await makeTrialStores(bakery, new Date())
  const page = await as(bakery.head)
  await page.goto('/formulas/new')
  await page.getByLabel('Name').first().fill('Seeded tin')
  const line = page
    .getByRole('row')
    .filter({ has: page.getByRole('combobox') })
    .first()
  await chooseIngredient(line.getByRole('combobox'), 'Bread flour')
  await line.getByRole('textbox').fill('100')
  await page.getByLabel('Pieces').fill('12')
  await isKept(page, 'Seeded tin')
  await page.reload()
  await expect(page.getByText(back)).toBeVisible()
  await expect(page.getByLabel('Name').first()).toHaveValue('Seeded tin')
  await expect(line.getByRole('combobox')).toHaveValue('Bread flour')
  await expect(line.getByRole('textbox')).toHaveValue('100')
  await expect(page.getByLabel('Pieces')).toHaveValue('12')
  await page.getByRole('button', { name: 'Start afresh' }).click()
  await expect(page.getByText(back)).toBeHidden()
  await expect(page.getByLabel('Name').first()).toHaveValue('')
  await expect(line.getByRole('combobox')).toHaveValue('')
  await page.reload()
  await expect(page.getByLabel('Name').first()).toHaveValue('')
})

test('no password is kept, and signing out leaves nothing of what one typed', async ({ as, bakery }) => {
  const page = await as(bakery.owner)
  await page.goto('/team')
  await page.getByLabel('Name').fill('Ida of the night')
  await isKept(page, 'Ida of the night')
  await page.goto('/account')
  for (const field of await page.locator('input[type=password]').all()) await field.fill('secret secret secret')
  await page.getByRole('heading', { level: 1 }).click()
  await page.reload()
  expect((await keptTexts(page)).join()).not.toContain('secret')
  await page.goto('/team')
  await expect(page.getByLabel('Name')).toHaveValue('Ida of the night')
  // Typed at the last moment, it is still to be written when the page goes.
  await page.getByLabel('Name').fill('Ida of the noon')
  await page.getByRole('button', { name: 'Sign out' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Sign in')
  expect(await keptTexts(page)).toEqual([])
})

test('where the page has changed meanwhile, what was typed is offered and not put over it', async ({ as, bakery }) => {
  const page = await as(bakery.owner)
  await page.goto('/team/settings')
  await page.getByLabel('Name of the bakery').fill('Mill Row and Daughters')
  await isKept(page, 'Daughters')
  const now = new Date()
  valueOf(
    await changeSettings.call(callerOf(bakery.owner.sessionSecret, now, bakery.owner.password), {
      bakeryName: 'Mill Street',
      worksAlone: false,
      costChangeLimitPct: 2,
      dayTurnsAtH: 0,
      stationIdleMin: 10,
      pinLastsH: 4,
      language: null,
      timeZone: 'Europe/Berlin',
      locale: 'en-GB',
      currency: 'EUR',
      region: 'eu',
      massUnits: 'metric',
      temperatureUnits: 'celsius',
      seenRevision: 1,
    }),
  )
  await page.reload()
  await expect(page.getByLabel('Name of the bakery')).toHaveValue('Mill Street')
  await page.getByRole('button', { name: 'Put it back' }).click()
  await expect(page.getByLabel('Name of the bakery')).toHaveValue('Mill Row and Daughters')
  await page.getByRole('button', { name: 'Start afresh' }).click()
  await expect(page.getByLabel('Name of the bakery')).toHaveValue('Mill Street')
})

test('a form that was done and stays is empty after a reload', async ({ as, bakery }) => {
  const stores = await makeTrialStores(bakery, new Date())
  valueOf(await draftTrial.call(callerOf(bakery.early.sessionSecret, new Date()), { content: trialContentOf(stores) }))
  const page = await as(bakery.owner)
  await page.goto('/team')
  await page.getByLabel('Name').fill('Ida')
  await page.getByLabel('Signs in with').fill(`ida-${bakery.bakeryId}@mill-row.example`)
  await page.getByRole('button', { name: 'Make the invitation' }).click()
  await expect(page.getByText('/join/').first()).toBeVisible()
  await page.reload()
  await expect(page.getByLabel('Name')).toHaveValue('')
  await expect(page.getByText(back)).toBeHidden()
  expect(await keptTexts(page)).toEqual([])
})

test('what is typed before the page’s script is there is kept as typed, and not taken for what the page gave', async ({
  as,
  bakery,
}) => {
  const page = await as(bakery.owner)
  const letThrough = await holdScripts(page)
  await page.goto('/team/settings', { waitUntil: 'commit' })
  await page.getByLabel('Currency').selectOption('GBP')
  letThrough()
  await page.getByLabel('Name of the bakery').fill('Mill Row by the river')
  await expect
    .poll(async () => {
      await page.getByLabel('Name of the bakery').press('End')
      await page.getByLabel('Name of the bakery').click()
      return (await keptTexts(page)).join()
    })
    .toContain('by the river')
  await page.reload()
  await expect(page.getByText(back)).toBeVisible()
  await expect(page.getByLabel('Currency')).toHaveValue('GBP')
  await expect(page.getByLabel('Name of the bakery')).toHaveValue('Mill Row by the river')
})

async function signInAs(page: Page, person: TestPerson, url: string): Promise<void> {
  await page.context().clearCookies()
  await page.context().addCookies([await cookieOf(person.sessionSecret, url)])
}

test('a reading and a correction half typed are there after a reload, and what got no answer is sent again as the same', async ({
  app,
  bakery,
  as,
  expectNoise,
}) => {
  expectNoise(/ERR_FAILED|ERR_CONNECTION|Failed to load resource/)
  const { batchId } = await walkReading({ bakery, neighbour: bakery, look: app.look })
  const page = await as(bakery.early, { viewport: { width: 1080, height: 810 }, hasTouch: true, locale: 'en-GB' })
  page.on('dialog', (dialog) => void dialog.accept())
  const field = (piece: number) =>
    page.getByRole('textbox', { name: `Loaf weight, Piece ${piece}, reading 1`, exact: true })
  const keep = (piece: number) => page.getByRole('button', { name: `Keep Loaf weight, Piece ${piece}` })
  const count = async () => (await app.look.query('SELECT 1 FROM reading WHERE batch_id = $1', [batchId])).rowCount
  await page.goto(`/shift/${batchId}`)
  await field(1).fill('421.5')
  await page.reload()
  await expect(field(1)).toHaveValue('421.5')
  await expect(page.getByText('and not in the book yet')).toBeVisible()

  // It arrives, its answer does not, and the browser dies.
  await page.route('**/api/v1/entries', async (route) => {
    await route.fetch()
    await route.abort()
  })
  await keep(1).click()
  await expect(page.getByText('no answer came')).toBeVisible()
  await field(2).fill('419')
  await page.unroute('**/api/v1/entries')
  await page.reload()
  await expect(page.getByText('In the book: Esi')).toBeVisible()
  await expect(page.getByText('no answer came')).toBeHidden()
  expect(await count()).toBe(1)

  // It did not arrive at all: the same one is sent again.
  await page.route('**/api/v1/entries', (route) => route.abort())
  await keep(2).click()
  await expect(page.getByText('no answer came')).toBeVisible()
  await page.unroute('**/api/v1/entries')
  await page.reload()
  await expect(field(2)).toHaveValue('419')
  await page.getByRole('button', { name: 'Send again' }).click()
  await expect(page.getByText('In the book: Esi')).toHaveCount(2)
  expect(await count()).toBe(2)

  await page.getByRole('button', { name: /^Correct 419/ }).click()
  const reason = page.getByLabel('Why was it wrong?')
  await reason.fill('The tin was on the scale')
  await page.reload()
  await expect(reason).toHaveValue('The tin was on the scale')
  await page.getByRole('button', { name: 'Leave it' }).click()
  await page.reload()
  await expect(page.getByText('In the book: Esi')).toHaveCount(2)
  await expect(reason).toBeHidden()
})

test('a reading typed before somebody else read the same is told apart, and can be thrown away', async ({
  app,
  bakery,
  as,
}) => {
  const { batchId } = await walkReading({ bakery, neighbour: bakery, look: app.look })
  const page = await as(bakery.early)
  page.on('dialog', (dialog) => void dialog.accept())
  const field = page.getByRole('textbox', { name: /^Loaf weight, Piece 1,/ })
  await page.goto(`/shift/${batchId}`)
  await field.fill('421.5')
  const other = await as(bakery.late)
  await other.goto(`/shift/${batchId}`)
  await other.getByRole('textbox', { name: /^Loaf weight, Piece 1,/ }).fill('422')
  await other.getByRole('button', { name: 'Keep Loaf weight, Piece 1' }).click()
  await expect(other.getByText('In the book: ')).toBeVisible()
  await page.reload()
  await expect(page.getByText('before the book got what it holds now')).toBeVisible()
  await expect(field).toHaveValue('421.5')
  await page.getByRole('button', { name: 'Throw it away' }).click()
  await page.reload()
  await expect(page.getByText('before the book got what it holds now')).toBeHidden()
  await expect(page.getByText('421.5')).toBeHidden()
})

test('pasted lines of readings, and what their columns say, are there after a reload', async ({ bakery, as }) => {
  const trial = await makeApprovedTrial(bakery, { pieces: 2, now: new Date() })
  const page = await as(bakery.owner)
  await page.goto(`/trials/${trial.trialId}/import`)
  const pasted = page.getByLabel('Or paste its lines')
  await pasted.fill('dough,loaf,g\nA1,1,912')
  await page.getByRole('button', { name: 'Look at the file' }).click()
  const column = page.getByLabel('g', { exact: true })
  await column.selectOption({ label: 'Loaf weight, g' })
  await page.getByLabel('Values outside', { exact: false }).check()
  await page.reload()
  await expect(page.getByText(back)).toBeVisible()
  await expect(pasted).toHaveValue('dough,loaf,g\nA1,1,912')
  await page.getByRole('button', { name: 'Look at the file' }).click()
  await expect(column.locator('option:checked')).toHaveText('Loaf weight, g')
  await expect(page.getByLabel('Values outside', { exact: false })).toBeChecked()
})
