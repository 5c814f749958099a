import { expect, test } from '../support/app'
import { makeApprovedTrial } from '../support/approved-trial'
import { chooseIngredient } from '../support/choose-ingredient'
import { makeTrialStores } from '../support/trials'
import { callerOf } from '../support/bakery'
import { openTheKey } from '../support/open-the-key'

const header = 'Day;Dough;Loaf;Loaf weight (g);Volume;Volume'
const good = [
  '1;control;1;412,5;1600;1610',
  '1;control;2;409;1590;1602',
  '1;A;1;415;1700;1712',
  '1;A;2;411,5;1690;1701',
]

test('a file with three faults is refused by its lines, and mended it is shown, stored and on the result', async ({
  app,
  bakery,
  as,
}) => {
  const trial = await makeApprovedTrial(bakery, { pieces: 2, now: new Date() })
  // The file says which dough is which, so whoever brings it knows the key.
  await openTheKey(callerOf(bakery.head.sessionSecret, new Date()), trial.trialId)
  const page = await as(bakery.head)
  await page.goto(`/trials/${trial.trialId}/result`)
  await page.getByRole('link', { name: 'Readings from a file' }).click()

  const choose = (lines: readonly string[]) =>
    page
      .getByLabel('CSV file')
      .setInputFiles({ name: 'loaves.csv', mimeType: 'text/csv', buffer: Buffer.from([header, ...lines].join('\r\n')) })
  await choose([
    good[0]!.replace('412,5', '4l2'),
    good[1]!.replace(';2;', ';3;'),
    good[2]!,
    good[3]!.replace('A', 'rye'),
  ])
  await page.getByLabel('These doughs were baked and measured outside the shift').check()
  await page.getByRole('button', { name: 'Look at the file' }).click()

  // Guessed from the header; one kind of dough is not known and has to be matched.
  await expect(page.getByLabel('Loaf weight (g)')).toHaveValue(`measure:${trial.measures['loaf-mass']}:g`)
  await expect(page.getByLabel('Decimal mark')).toHaveValue(',')
  await expect(page.getByLabel('‘control’ stands for')).toHaveValue('0')
  await expect(page.getByLabel('‘rye’ stands for')).toHaveValue('')
  await expect(page.getByRole('heading', { name: '3 things are at fault, so nothing can be stored' })).toBeVisible()
  const faults = page.getByRole('group', { name: '3 things are at fault' }).getByRole('row')
  await expect(faults.nth(1)).toContainText('Loaf weight (g)')
  await expect(faults.nth(1)).toContainText('Write a number here')
  await expect(faults.nth(2)).toContainText('Must be 2 or less.')
  await expect(faults.nth(3)).toContainText('It is not matched which dough ‘rye’ stands for.')
  expect(await faults.evaluateAll((rows) => rows.map((row) => row.querySelector('td')?.textContent))).toEqual([
    undefined,
    '2',
    '3',
    '5',
  ])
  await expect(page.getByRole('button', { name: /^Store/ })).toHaveCount(0)
  const count = async () =>
    Number(
      (await app.look.query<{ n: string }>('SELECT count(*) n FROM reading WHERE trial_id = $1', [trial.trialId]))
        .rows[0]?.n,
    )
  expect(await count()).toBe(0)

  await choose(good)
  await expect(page.getByText('Something was changed. Look again before it is stored.')).toBeVisible()
  await page.getByRole('button', { name: 'Look again' }).click()
  await expect(
    page.getByRole('region', { name: 'What would be stored' }).getByText('12 readings from 4 rows'),
  ).toBeVisible()
  await expect(page.getByRole('cell', { name: 'measured' })).toHaveCount(2)
  await page.getByRole('button', { name: 'Store 12 readings' }).click()
  await expect(page.getByText('12 readings are in the book. 2 doughs are measured.')).toBeVisible()
  expect(await count()).toBe(12)

  await page.getByRole('link', { name: 'What it showed' }).click()
  await expect(page.getByRole('cell', { name: 'measured' })).toHaveCount(2)
  await page.goto(`/shift/${trial.batches[0]!.batchId}`)
  await page.locator('#readings summary', { hasText: 'Loaf weight' }).click()
  await expect(page.getByText('412,5').first()).toBeVisible()
  await expect(page.getByText('In the book: Henk').first()).toBeVisible()
})

test('a file that is not plain text, and pasted lines that are', async ({ bakery, as }) => {
  const trial = await makeApprovedTrial(bakery, { pieces: 2, now: new Date() })
  await openTheKey(callerOf(bakery.owner.sessionSecret, new Date()), trial.trialId)
  const page = await as(bakery.owner, { viewport: { width: 375, height: 800 } })
  await page.goto(`/trials/${trial.trialId}/import`)
  await page.getByRole('button', { name: 'Look at the file' }).click()
  await expect(page.getByText('There is nothing in it. Choose a file, or paste its lines.')).toBeVisible()
  await page
    .getByLabel('CSV file')
    .setInputFiles({ name: 'loaves.xls', mimeType: 'text/csv', buffer: Buffer.from([0xd0, 0xcf, 0x11, 0xe0]) })
  await page.getByRole('button', { name: 'Look at the file' }).click()
  await expect(page.getByText('The file is not plain text in UTF-8.')).toBeVisible()
  await page
    .getByLabel('CSV file')
    .setInputFiles({ name: 'large.csv', mimeType: 'text/csv', buffer: Buffer.alloc(1_048_577, 'a') })
  await page.getByRole('button', { name: 'Look at the file' }).click()
  await expect(page.getByText('The file is larger than 1 MB.')).toBeVisible()
  await page.getByLabel('CSV file').setInputFiles([])

  // Fewer letters than bytes are allowed, and more bytes than a request may bring: said at the field, where it stays.
  const pasted = page.getByLabel('Or paste its lines')
  await pasted.fill('温'.repeat(1_045_000))
  await page.getByRole('button', { name: 'Look at the file' }).click()
  await expect(page.locator('#text-error')).toContainText('larger than 1 MB')
  expect(await pasted.inputValue()).toHaveLength(1_045_000)
  await page.getByLabel('Or paste its lines').fill([header, ...good].join('\n'))
  await page.getByRole('button', { name: 'Look at the file' }).click()
  await expect(page.getByText('This dough is not begun.').first()).toBeVisible()
})

test('what a trial sets apart is typed once, kept over a fault, and stands on the plan', async ({ bakery, as }) => {
  const stores = await makeTrialStores(bakery, new Date())
  const page = await as(bakery.early)
  await page.goto('/trials/new')
  await page.getByLabel('Question', { exact: true }).fill('Does malt brown the crust at each heat?')
  await page.getByLabel('Formula').selectOption(stores.formulaId)
  await page.getByLabel('Name').first().fill('malt, 0.6 %')
  await chooseIngredient(page.getByRole('combobox', { name: 'Ingredient' }).first(), 'Malt powder')
  await page.getByLabel('Dose').first().fill('0.6')
  await page.getByLabel('Tap water, cold').fill('12')
  await page.getByLabel('What differs').fill('Baking temperature')
  await page.getByLabel('Its levels (2 to 12)').fill('200\n215\n230')
  await page.getByRole('button', { name: 'Keep the draft' }).click()
  await expect(page.getByText('must be a multiple of the number of levels').first()).toBeVisible()
  await expect(page.getByLabel('Its levels (2 to 12)')).toHaveValue('200\n215\n230')
  await page.getByLabel('Loaves or pieces from a dough').fill('6')
  await page.getByRole('button', { name: 'Keep the draft' }).click()
  await expect(page.getByText('Baking temperature: 200, 215, 230; the pieces take them in turn')).toBeVisible()
  await page.getByRole('link', { name: 'Change the draft' }).click()
  await expect(page.getByLabel('Its levels (2 to 12)')).toHaveValue('200\n215\n230')
})
