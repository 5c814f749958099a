import type { Page } from 'playwright/test'
import { changeSettings } from '../../lib/kitchen/people/change-settings'
import { invitePerson } from '../../lib/kitchen/people/invite-person'
import { addIngredient } from '../../lib/kitchen/stores/add-ingredient'
import { changeIngredient } from '../../lib/kitchen/stores/change-ingredient'
import { expect, test } from '../support/app'
import { makeApprovedTrial } from '../support/approved-trial'
import { callerOf, valueOf } from '../support/bakery'

const focused = (page: Page) =>
  page.evaluate(() => `${document.activeElement?.tagName} ${document.activeElement?.textContent?.slice(0, 60)}`)
const focusIs = (page: Page, what: RegExp) => expect.poll(() => focused(page)).toMatch(what)
const settings = {
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
}

test('the focus is on the headline of each new page, on what a form came to, and on the section of a form that is gone', async ({
  as,
  bakery,
}) => {
  const now = new Date()
  valueOf(
    await invitePerson.call(callerOf(bakery.owner.sessionSecret, now), {
      name: 'Ida',
      email: `ida-${bakery.bakeryId}@mill-row.example`,
      role: 'shift_baker',
    }),
  )
  const page = await as(bakery.owner)
  await page.goto('/shift')
  await page.getByRole('link', { name: 'Team', exact: true }).click()
  await focusIs(page, /^H1 .*work here/)
  await page.getByRole('button', { name: 'Withdraw the invitation of Ida' }).click()
  await expect(page.getByText('Nobody is invited at the moment.')).toBeVisible()
  await focusIs(page, /^H2 Open invitations/)
  await page.getByRole('link', { name: 'Settings' }).click()
  await focusIs(page, /^H1 /)
  await page.getByLabel('Name of the bakery').fill('Mill Lane')
  await page.getByRole('button', { name: 'Keep' }).click()
  await focusIs(page, /^DIV Done\./)
})

test('rows of a trial take the focus where the next word is typed', async ({ as, bakery }) => {
  const page = await as(bakery.early)
  const trial = await makeApprovedTrial(bakery, { now: new Date() })
  expect(trial.trialId).toBeTruthy()
  await page.goto('/trials/new')
  await page.getByRole('button', { name: 'Add a test dough' }).click()
  await expect(page.getByLabel('Name').nth(1)).toBeFocused()
  await page
    .getByRole('button', { name: /Add another ingredient to it$/ })
    .first()
    .click()
  await expect(page.getByLabel('Ingredient', { exact: true }).nth(1)).toBeFocused()
  await page.getByRole('button', { name: 'Take this ingredient out' }).nth(1).click()
  await expect(page.getByLabel('Ingredient', { exact: true }).first()).toBeFocused()
  await page.getByRole('button', { name: 'Take Dough B out' }).click()
  await expect(page.getByRole('button', { name: 'Add a test dough' })).toBeFocused()
})

test('where two people changed the same thing, the second is told by whom and what, and can send on', async ({
  as,
  bakery,
}) => {
  const now = new Date()
  const page = await as(bakery.owner)
  await page.goto('/team/settings')
  await page.getByLabel('Currency').selectOption('GBP')
  valueOf(
    await changeSettings.call(callerOf(bakery.owner.sessionSecret, now, bakery.owner.password), {
      ...settings,
      bakeryName: 'Mill Street',
      seenRevision: 1,
    }),
  )
  await page.getByRole('button', { name: 'Keep' }).click()
  await expect(page.getByText('Olga changed this at')).toBeVisible()
  await expect(page.getByText('Now in the book: Mill Street')).toBeVisible()
  // Of what was not changed by the other, nothing is said.
  await expect(page.getByText(/Now in the book/)).toHaveText(['Now in the book: Mill Street', 'Now in the book: 2'])
  await expect(page.getByLabel('Currency')).toHaveValue('GBP')
  await page.getByLabel('Name of the bakery').fill('Mill Street')
  await page.getByRole('button', { name: 'Keep' }).click()
  await expect(page.getByText('Done.')).toBeVisible()
  await page.reload()
  await expect(page.getByLabel('Currency')).toHaveValue('GBP')
  await expect(page.getByLabel('Name of the bakery')).toHaveValue('Mill Street')
})

test('ticks and choices of a few say what stands in the book now, as other fields do', async ({ as, bakery }) => {
  const facts = {
    name: 'Rye flour',
    labelName: 'Rye flour',
    kind: 'flour',
    active: null,
    customary: null,
    allergens: ['gluten'],
    dustCaution: true,
    note: '',
    figures: {},
  }
  const caller = callerOf(bakery.head.sessionSecret, new Date())
  const { ingredientId } = valueOf(await addIngredient.call(caller, { ...facts, allergenCheck: 'checked-now' }))
  const page = await as(bakery.owner)
  await page.goto(`/stores/ingredients/${ingredientId}/change`)
  const trial = { allergens: ['milk'], dustCaution: false, counts: ['water'] }
  valueOf(
    await changeIngredient.call(caller, {
      ...facts,
      ...trial,
      ingredientId,
      seenRevision: 1,
      allergenCheck: 'checked-now',
      inUse: true,
    }),
  )
  await page.getByLabel('Note').fill('From the weir mill.')
  await page.getByRole('button', { name: 'Keep' }).click()
  await expect(page.getByText('Henk changed this at')).toBeVisible()
  const hintOf = (name: string) => page.locator(`[id="${name}-hint"]`)
  await expect(hintOf('allergens.milk')).toHaveText('Now in the book: ticked')
  await expect(hintOf('allergens.gluten')).toHaveText('Now in the book: not ticked')
  await expect(hintOf('dustCaution')).toContainText('Now in the book: not ticked')
  await expect(page.getByRole('radiogroup').filter({ hasText: 'Now in the book' })).toHaveCount(1)
  // Of what was not changed by the other, nothing is said.
  await expect(hintOf('allergens.egg')).toHaveCount(0)
  await expect(hintOf('bindsWater')).not.toContainText('Now in the book')
  await expect(page.getByLabel('Note')).toHaveValue('From the weir mill.')
})
