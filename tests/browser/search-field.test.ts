import fs from 'node:fs'
import { createRequire } from 'node:module'
import type { Page } from 'playwright/test'
import { v7 as uuid } from 'uuid'
import { db } from '../../lib/db/client'
import { changeDraftTrial } from '../../lib/kitchen/trials/change-draft-trial'
import { draftTrial } from '../../lib/kitchen/trials/draft-trial'
import { cookieOf, expect, test } from '../support/app'
import { callerOf, valueOf, type TestBakery } from '../support/bakery'
import { makeTrialStores, trialContentOf } from '../support/trials'

const axeSource = fs.readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')
declare const axe: { run(options: object): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> }

/** Invented ingredients of a large bakery, among them 'Grain 0001' to 'Grain 2500'. */
async function addMany({ bakeryId }: TestBakery): Promise<void> {
  const data = Array.from({ length: 2500 }, (_, i) => `Grain ${String(i + 1).padStart(4, '0')}`).map((name) => ({
    bakeryId,
    id: uuid(),
    name,
    kind: 'seed_or_grain' as const,
    labelName: name,
    allergens: [],
    dustCaution: false,
    note: '',
    revision: 1,
    createdAt: new Date(),
  }))
  await db().ingredient.createMany({ data })
}
const dose = (page: Page) => page.getByRole('combobox', { name: 'Ingredient', exact: true })
const options = (page: Page) => page.getByRole('listbox').getByRole('option')

test('a bakery with 2,500 ingredients chooses the last one, and its page holds none of them', async ({
  as,
  bakery,
}) => {
  const stores = await makeTrialStores(bakery, new Date())
  await addMany(bakery)
  const page = await as(bakery.early)
  await page.goto('/trials/new')
  expect(await page.content()).not.toContain('Grain 0')
  await page.getByLabel('Question', { exact: true }).fill('Does the last grain earn its place?')
  await page.getByLabel('Formula').selectOption(stores.formulaId)
  await page.getByLabel('Name').first().fill('with grain')
  await dose(page).click()
  // The first twenty by name, before anything is typed.
  await expect(options(page)).toHaveCount(20)
  await expect(options(page).first()).toHaveText('Bread flour')
  await expect(page.getByRole('status').filter({ hasText: /^2,?488 more/ })).toHaveCount(1)
  await dose(page).fill('gráin 25')
  await expect(options(page)).toHaveText(['Grain 2500'])
  await options(page).first().click()
  await expect(dose(page)).toHaveValue('Grain 2500')
  await expect(dose(page)).toHaveAttribute('aria-expanded', 'false')
  await page.getByLabel('Dose', { exact: true }).fill('5')
  await page.getByLabel('Tap water, cold').fill('12')
  await page.getByRole('button', { name: 'Keep the draft' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Does the last grain earn its place?')
  await page.getByRole('link', { name: 'Change the draft' }).click()
  await expect(dose(page)).toHaveValue('Grain 2500')
})

test('a formula is chosen by keys alone: arrows, Enter, Escape and Tab, with totals that follow', async ({
  as,
  bakery,
}) => {
  await makeTrialStores(bakery, new Date())
  const page = await as(bakery.head)
  await page.goto('/formulas/new')
  const line = (at: number) => page.getByRole('combobox', { name: `Line ${at} of stage 1: Ingredient` })
  await line(1).focus()
  await page.keyboard.press('ArrowDown')
  await expect(options(page)).toHaveCount(8)
  await expect(line(1)).toHaveAttribute(
    'aria-activedescendant',
    (await options(page).first().getAttribute('id')) ?? 'none',
  )
  await page.keyboard.press('ArrowUp')
  await expect(page.getByRole('option', { name: 'Yoghurt' })).toHaveAttribute(
    'id',
    (await line(1).getAttribute('aria-activedescendant')) ?? 'none',
  )
  await page.keyboard.press('ArrowDown')
  await page.keyboard.press('Enter')
  await expect(line(1)).toHaveValue('Bread flour')
  await page.keyboard.press('Tab')
  await page.keyboard.type('100')
  await expect(
    page
      .getByText('The flour makes 100 %')
      .first()
      .or(page.locator('dd', { hasText: '100' }).first()),
  ).toBeVisible()

  // Tab takes what the arrows are on.
  await line(2).focus()
  await page.keyboard.type('wat')
  await expect(options(page)).toHaveText(['Water'])
  await page.keyboard.press('ArrowDown')
  await page.keyboard.press('Tab')
  await expect(line(2)).toHaveValue('Water')
  await expect(page.getByRole('textbox', { name: 'Line 2 of stage 1: On flour, %' })).toBeFocused()

  // Escape closes the list and leaves what is typed; once more, and it is gone. A choice stays.
  await line(3).focus()
  await page.keyboard.type('sal')
  await expect(options(page)).toHaveText(['Salt'])
  await page.keyboard.press('Escape')
  await expect(options(page)).toHaveCount(0)
  await expect(line(3)).toHaveValue('sal')
  await page.keyboard.press('Escape')
  await expect(line(3)).toHaveValue('')
  await line(2).focus()
  await page.keyboard.press('Escape')
  await expect(line(2)).toHaveValue('Water')

  // A whole name is chosen when one goes on; part of one is not, and is said.
  await line(3).focus()
  await page.keyboard.type('SALT')
  await page.keyboard.press('Tab')
  await expect(line(3)).toHaveValue('Salt')
  await line(4).focus()
  await page.keyboard.type('yeas')
  await page.keyboard.press('Tab')
  await expect(line(4)).toHaveAccessibleDescription(/Nothing here is called “yeas”/)
  await expect(line(4)).toHaveValue('yeas')
  await page.getByLabel('Name of the formula').fill('Keys')
  await page.getByRole('button', { name: 'Keep the draft' }).click()
  await page
    .getByRole('main')
    .getByRole('alert')
    .getByRole('link', { name: /Line 4 of stage 1: Ingredient/ })
    .click()
  await expect(line(4)).toBeFocused()
  await expect(line(4)).toHaveValue('yeas')
  await expect(line(4)).toHaveAccessibleDescription(/Nothing here is called “yeas”/)
  await expect(line(3)).toHaveValue('Salt')
})

test('a choice by keys alone is kept over a reload, with the name that the stores have by then and its totals', async ({
  as,
  bakery,
}) => {
  const stores = await makeTrialStores(bakery, new Date())
  const page = await as(bakery.head)
  await page.goto('/formulas/new')
  const line = page.getByRole('combobox', { name: 'Line 1 of stage 1: Ingredient' })
  await page.getByRole('textbox', { name: 'Line 1 of stage 1: On flour, %' }).fill('100')
  await line.focus()
  await page.keyboard.type('bread')
  await expect(options(page)).toHaveText(['Bread flour'])
  await page.keyboard.press('ArrowDown')
  await page.keyboard.press('Enter')
  await expect
    .poll(() => page.evaluate(() => Object.values(localStorage).some((kept) => String(kept).includes('Bread flour'))))
    .toBe(true)
  await db().ingredient.update({
    where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: stores.ids.flour } },
    data: { name: 'Strong flour' },
  })
  await page.reload()
  await expect(line).toHaveValue('Strong flour')
  await expect(page.getByText('100 %').first()).toBeVisible()
})

test('where two changed the ingredient of one dough, the second sees what stands there now by its name', async ({
  as,
  bakery,
}) => {
  const stores = await makeTrialStores(bakery, new Date())
  const caller = callerOf(bakery.early.sessionSecret, new Date())
  const content = trialContentOf(stores)
  const { trialId } = valueOf(await draftTrial.call(caller, { content }))
  const page = await as(bakery.head)
  await page.goto(`/trials/${trialId}/edit`)
  const field = dose(page).first()
  const before = await field.inputValue()
  const [arm, ...others] = content.arms
  if (!arm?.doses[0]) throw new Error('no dough')
  const changed = {
    ...content,
    arms: [
      { ...arm, doses: [{ ...arm.doses[0], ingredientId: stores.ids.potatoFlakes, doseOf: 'product' }] },
      ...others,
    ],
  }
  valueOf(await changeDraftTrial.call(caller, { trialId, seenRevision: 1, content: changed }))
  await page.getByRole('button', { name: 'Keep the draft' }).click()
  await expect(field).toHaveAccessibleDescription(/Now in the book: Potato flakes/)
  await expect(field).toHaveValue(before)
})

test('nothing that axe finds while the list is open, each line is high enough for a finger, and it stays on the screen', async ({
  as,
  bakery,
}) => {
  await makeTrialStores(bakery, new Date())
  await addMany(bakery)
  const page = await as(bakery.head, { bypassCSP: true, viewport: { width: 768, height: 1024 }, hasTouch: true })
  for (const [address, name] of [
    ['/trials/new', 'Ingredient'],
    ['/formulas/new', 'Line 4 of stage 1: Ingredient'],
  ] as const) {
    await page.goto(address)
    await page.evaluate(axeSource)
    const field = page.getByRole('combobox', { name, exact: true })
    await field.tap()
    await expect(options(page)).toHaveCount(20)
    await page.keyboard.press('ArrowDown')
    const found = await page.evaluate(() =>
      axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] }),
    )
    expect(found.violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ')}`)).toEqual([])
    for (const option of await options(page).all())
      expect((await option.boundingBox())?.height).toBeGreaterThanOrEqual(44)
    const list = await page.getByRole('listbox').boundingBox()
    expect(list?.x).toBeGreaterThanOrEqual(0)
    expect((list?.x ?? 0) + (list?.width ?? 0)).toBeLessThanOrEqual(768)
    expect((list?.y ?? 0) + (list?.height ?? 0)).toBeLessThanOrEqual(1024)
    await options(page).nth(3).tap()
    await expect(field).not.toHaveValue('')
  }
})

test('what finds them answers nobody who is not signed in, and only of the own bakery', async ({ app, bakery }) => {
  await makeTrialStores(bakery, new Date())
  const ask = (question: string, cookie?: string) =>
    fetch(`${app.url}/stores/find-ingredients${question}`, {
      redirect: 'manual',
      headers: cookie ? { Cookie: cookie } : {},
    })
  expect((await ask('?part=')).status).toBe(401)
  const { name, value } = await cookieOf(bakery.early.sessionSecret, app.url)
  const own = `${name}=${value}`
  const found = await ask('?part=flour', own)
  expect(found.status).toBe(200)
  expect(found.headers.get('cache-control')).toContain('no-store')
  expect(await found.json()).toMatchObject({ count: 1, options: [{ name: 'Bread flour' }] })
  expect((await ask('?part=&id=x', own)).status).toBe(422)
  expect(await (await ask('?part=%25', own)).json()).toMatchObject({ count: 0 })
})

test('where no answer comes, that is said and what was typed stays', async ({ as, bakery, expectNoise }) => {
  expectNoise(/Failed to load resource/)
  await makeTrialStores(bakery, new Date())
  const page = await as(bakery.early)
  await page.goto('/trials/new')
  await page.route('**/stores/find-ingredients*', (route) => route.abort())
  await dose(page).fill('Yoghurt')
  await expect(dose(page)).toHaveAccessibleDescription(/The list does not come/)
  await expect(dose(page)).toHaveValue('Yoghurt')
  await page.unroute('**/stores/find-ingredients*')
  await dose(page).press('Tab')
  await expect(dose(page)).not.toHaveAccessibleDescription(/The list does not come/)
  await expect(page.locator('input[name="content.arms.0.doses.0.ingredientId"]')).not.toHaveValue('')
})
