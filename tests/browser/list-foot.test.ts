import type { Page } from 'playwright/test'
import { v7 as uuid } from 'uuid'
import { db } from '../../lib/db/client'
import { expect, test } from '../support/app'

const focused = (page: Page) =>
  page.evaluate(() => `${document.activeElement?.tagName} ${document.activeElement?.textContent?.slice(0, 40)}`)

test('of 51 things fifty stand there, the foot says how many there are, and leads on and back by keys with the focus at the head of the list', async ({
  as,
  bakery,
}) => {
  const names = Array.from({ length: 51 }, (_, i) => `Grain ${String(i + 1).padStart(2, '0')}`)
  await db().ingredient.createMany({
    data: names.map((name) => ({
      bakeryId: bakery.bakeryId,
      id: uuid(),
      name,
      kind: 'seed_or_grain' as const,
      labelName: name,
      allergens: [],
      dustCaution: false,
      note: '',
      revision: 1,
      createdAt: new Date(),
    })),
  })
  const page = await as(bakery.early)
  await page.goto('/stores')
  const list = page.getByRole('region', { name: 'Ingredients' })
  const ways = list.getByRole('navigation', { name: 'Ingredients: the rest of the list' })
  const shown = async () =>
    (await list.getByRole('link', { name: /^Grain/ }).allTextContents()).map((text) => text.trim())
  await expect(list.getByText('50 of 51 are shown here.')).toBeVisible()
  expect(await shown()).toEqual(names.slice(0, 50))
  await expect(ways.getByRole('link')).toHaveText(['The next ones'])

  await ways.getByRole('link', { name: 'The next ones' }).focus()
  await page.keyboard.press('Enter')
  await expect(list.getByText('1 of 51 are shown here.')).toBeVisible()
  expect(await shown()).toEqual(['Grain 51'])
  await expect.poll(() => focused(page)).toBe('H2 Ingredients')
  await page.keyboard.press('Tab')
  // Into the list, not past it.
  await expect(list.locator('*:focus:has(table), table :focus')).toBeFocused()
  await expect(ways.getByRole('link')).toHaveText(['Back to the first'])

  await ways.getByRole('link', { name: 'Back to the first' }).focus()
  await page.keyboard.press('Enter')
  await expect(list.getByText('50 of 51 are shown here.')).toBeVisible()
  expect(await shown()).toEqual(names.slice(0, 50))
  await expect.poll(() => focused(page)).toBe('H2 Ingredients')

  await page.goBack()
  await expect(list.getByText('1 of 51 are shown here.')).toBeVisible()
  await expect.poll(() => focused(page)).toBe('H2 Ingredients')
})
