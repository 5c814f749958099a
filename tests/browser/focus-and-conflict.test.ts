import type { Page } from 'playwright/test'
import { changeSettings } from '../../lib/kitchen/people/change-settings'
import { invitePerson } from '../../lib/kitchen/people/invite-person'
import { expect, test } from '../support/app'
import { makeApprovedTrial } from '../support/approved-trial'
import { callerOf, valueOf } from '../support/bakery'

const focused = (page: Page) => page.evaluate(() => `${document.activeElement?.tagName} ${document.activeElement?.textContent?.slice(0, 60)}`)
const focusIs = (page: Page, what: RegExp) => expect.poll(() => focused(page)).toMatch(what)
const settings = { worksAlone: false, costChangeLimitPct: 2, language: null, timeZone: 'Europe/Berlin', locale: 'en-GB', currency: 'EUR', region: 'eu', massUnits: 'metric', temperatureUnits: 'celsius' }

test('the focus is on the headline of each new page, on what a form came to, and on the section of a form that is gone', async ({ as, bakery }) => {
  const now = new Date()
  valueOf(await invitePerson.call(callerOf(bakery.owner.sessionSecret, now), { name: 'Ida', email: `ida-${bakery.bakeryId}@mill-row.example`, role: 'shift_baker' }))
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
  await page.getByRole('button', { name: /Add another ingredient to it$/ }).first().click()
  await expect(page.getByLabel('Ingredient', { exact: true }).nth(1)).toBeFocused()
  await page.getByRole('button', { name: 'Take this ingredient out' }).nth(1).click()
  await expect(page.getByLabel('Ingredient', { exact: true }).first()).toBeFocused()
  await page.getByRole('button', { name: 'Take Dough B out' }).click()
  await expect(page.getByRole('button', { name: 'Add a test dough' })).toBeFocused()
})

test('where two people changed the same thing, the second is told by whom and what, and can send on', async ({ as, bakery }) => {
  const now = new Date()
  const page = await as(bakery.owner)
  await page.goto('/team/settings')
  await page.getByLabel('Currency').selectOption('GBP')
  valueOf(await changeSettings.call(callerOf(bakery.owner.sessionSecret, now, bakery.owner.password), { ...settings, bakeryName: 'Mill Street', seenRevision: 1 }))
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
