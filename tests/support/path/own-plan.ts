import type { Page } from 'playwright/test'
import { expect } from '../app'
import { chooseIngredient } from '../choose-ingredient'

/** Proposes a small plan as whoever has the page, who may approve plans, and sees that they cannot approve this one. */
export async function expectOwnPlanRefused(page: Page): Promise<void> {
  await page.goto('/trials/new')
  await page.getByLabel('Question', { exact: true }).fill('Does a little more sugar colour the crust?')
  await page.getByLabel('Formula', { exact: true }).selectOption({ label: 'Mill tin, version 1' })
  await page.getByLabel('Name', { exact: true }).fill('sugar, 1 % more')
  await chooseIngredient(page.getByRole('combobox', { name: 'Ingredient', exact: true }), 'Sugar')
  await page.getByLabel('Dose', { exact: true }).fill('1')
  await page.getByLabel('Tap water, cold').fill('12')
  await page.getByRole('button', { name: 'Keep the draft' }).click()
  await page.getByRole('button', { name: 'Propose the plan' }).click()
  await expect(page.getByText('You proposed this plan. Ask the owner or the head baker.')).toBeVisible()
  await expect(page.getByRole('button', { name: 'Sign the decision' })).toBeHidden()
}
