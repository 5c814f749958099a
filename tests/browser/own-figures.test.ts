import { changeSettings } from '../../lib/kitchen/people/change-settings'
import { draftTrial } from '../../lib/kitchen/trials/draft-trial'
import { expect, test } from '../support/app'
import { callerOf, valueOf } from '../support/bakery'
import { makeApprovedTrial } from '../support/approved-trial'
import { chooseIngredient } from '../support/choose-ingredient'
import { makeTrialStores, trialContentOf } from '../support/trials'
import { openTheKey } from '../support/open-the-key'

test('a bakery that writes 62,5 and weighs in ounces types and reads its own figures in formulas and plans', async ({
  as,
  bakery,
}) => {
  const now = new Date()
  const stores = await makeTrialStores(bakery, now)
  const { owner, head } = bakery
  const settings = {
    bakeryName: 'Mill Row',
    worksAlone: false,
    costChangeLimitPct: 2,
    dayTurnsAtH: 0,
    stationIdleMin: 10,
    pinLastsH: 4,
    language: null,
    timeZone: 'Europe/Berlin',
    locale: 'en-DE',
    currency: 'EUR',
    region: 'eu',
    massUnits: 'ounces',
    temperatureUnits: 'fahrenheit',
    seenRevision: 1,
  }
  valueOf(await changeSettings.call(callerOf(owner.sessionSecret, now, owner.password), settings))
  const page = await as(head)
  await page.goto('/formulas/new')
  await page.getByLabel('Name').first().fill('Plain tin')
  await page.getByLabel('Reason').fill('To begin with')
  await page.getByLabel('Pieces').fill('12')
  await page.getByLabel('Scaling weight (up to 1.763)').fill('32,5')
  await page.getByLabel('Dough loss').fill('0')
  const row = (at: number) =>
    page
      .getByRole('row')
      .filter({ has: page.getByRole('combobox') })
      .nth(at)
  for (const [at, name, pct] of [
    [0, 'Bread flour', '100'],
    [1, 'Water', '62,5'],
    [2, 'Salt', '1,8'],
  ] as const) {
    await chooseIngredient(row(at).getByRole('combobox'), name)
    await row(at).getByRole('textbox').fill(pct)
  }
  await expect(page.getByText('24 lb 6,0 oz').first()).toBeVisible()
  await page.getByLabel('Dough temperature (32 to 113)').fill('78')
  await page.getByLabel('Bake temperature (122 to 752)').fill('450')
  for (const name of ['Mixing', 'Bulk', 'Proof', 'Bake']) await page.getByLabel(name, { exact: true }).fill('12,5')
  await page.getByRole('button', { name: 'Keep the draft' }).click()
  await expect(page.getByText('78 °F')).toBeVisible()
  await expect(page.getByText('450 °F')).toBeVisible()
  await expect(page.getByText('62,50 %').first()).toBeVisible()
  await expect(page.getByText('2 lb 0,5 oz').first()).toBeVisible()
  await expect(page.getByRole('main')).not.toContainText(/\d g\b/)
  await expect(page.getByRole('main')).not.toContainText('°C')

  const { trialId } = valueOf(
    await draftTrial.call(callerOf(head.sessionSecret, now), { content: trialContentOf(stores) }),
  )
  const approved = await makeApprovedTrial(bakery, { now })
  await openTheKey(callerOf(head.sessionSecret, now), approved.trialId)
  for (const path of [`/trials/${trialId}`, `/trials/${trialId}/edit`, `/trials/${approved.trialId}/weigh-out`]) {
    await page.goto(path)
    // Names and questions stand as they were typed.
    const text = (await page.getByRole('main').innerText()).replaceAll('0.6 %', '')
    // Grams and degrees Celsius of their own, not 'per 100 g' of a supplier.
    expect(text.match(/.{0,40}(?<!per 100)[\u00a0 ]g\b.{0,20}|.{0,40}°C/g) ?? [], path).toEqual([])
    expect(text.match(/\d\.\d{1,2}\b.{0,20}/g) ?? [], path).toEqual([])
  }
})
