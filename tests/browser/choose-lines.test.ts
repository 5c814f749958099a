import { draftTrial } from '../../lib/kitchen/trials/draft-trial'
import { expect, test } from '../support/app'
import { callerOf, valueOf } from '../support/bakery'
import { chooseIngredient } from '../support/choose-ingredient'
import { makeTrialStores, trialContentOf } from '../support/trials'

test('a line is fixed and another goes on a scale of choice, and the plan says both', async ({ bakery, as }) => {
  const now = new Date()
  const stores = await makeTrialStores(bakery, now)
  const { trialId } = valueOf(
    await draftTrial.call(callerOf(bakery.early.sessionSecret, now, bakery.early.password), {
      content: trialContentOf(stores),
    }),
  )
  const page = await as(bakery.early)
  await page.goto(`/trials/${trialId}`)
  const lineOf = (name: string) => page.getByRole('group', { name: `${name}, Final dough` })
  await expect(lineOf('Sunflower oil').getByLabel('To make room')).toHaveValue('')
  await lineOf('Sunflower oil').getByLabel('To make room').selectOption('stays')
  await lineOf('Salt').getByLabel('Scale').selectOption(stores.scaleId)
  await page.getByRole('button', { name: 'Keep these choices' }).click()
  const declared = page.getByRole('region', { name: 'Declared before baking' })
  await expect(declared).toContainText('Sunflower oil: stays')
  await expect(declared).toContainText('Salt: on Bench scale')
  // The fat of the yoghurt has nowhere to go now.
  await expect(page.getByText('fat cannot be held here').first()).toBeVisible()
  await page.reload()
  await expect(lineOf('Sunflower oil').getByLabel('To make room')).toHaveValue('stays')
})

test('all of an ingredient goes out without its amount, and an amount that was typed is there again', async ({
  bakery,
  as,
}) => {
  const stores = await makeTrialStores(bakery, new Date())
  const page = await as(bakery.early)
  await page.goto('/trials/new')
  await page.getByLabel('Question', { exact: true }).fill('Does the loaf need its oil?')
  await page.getByLabel('Formula').selectOption(stores.formulaId)
  await page.getByLabel('Name').first().fill('no oil')
  await chooseIngredient(page.getByRole('combobox', { name: 'Ingredient', exact: true }), 'Sunflower oil')
  await page.getByLabel('Dose', { exact: true }).fill('1.5')
  await page.getByLabel('How it is meant').selectOption('without')
  await expect(page.getByLabel('Dose', { exact: true })).toBeHidden()
  await page.getByLabel('How it is meant').selectOption('in_all')
  await expect(page.getByLabel('Dose', { exact: true })).toHaveValue('1.5')
  await page.getByLabel('How it is meant').selectOption('without')
  await page.getByLabel('Tap water, cold').fill('12')
  await page.getByRole('button', { name: 'Keep the draft' }).click()
  await expect(page.getByText('Sunflower oil: left out')).toBeVisible()
  await page.getByRole('link', { name: 'Change the draft' }).click()
  await expect(page.getByLabel('How it is meant')).toHaveValue('without')
})
