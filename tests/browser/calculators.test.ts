import { expect, test } from '../support/app'

const question = '/calculators/weighing/least-net-mass'

test('a calculation is found, asked wrongly, asked rightly, and passed on by its address', async ({ as, bakery }) => {
  const [head, early] = [await as(bakery.head), await as(bakery.early)]
  await head.goto('/shift')
  await head.getByRole('navigation').getByRole('link', { name: 'Calculators' }).click()
  await expect(head.getByRole('heading', { level: 1 })).toContainText('each with its source')
  await head.getByLabel('Find a calculation').fill('least MASS')
  await head.getByRole('button', { name: 'Find', exact: true }).click()
  await expect(head.getByRole('heading', { level: 1 })).toContainText('‘least MASS’')
  await head.getByRole('link', { name: 'Least mass a scale weighs well enough' }).click()

  // It opens with an example that says what it is, and its answer.
  await expect(head.getByText('Invented example.')).toBeVisible()
  await expect(head.getByRole('heading', { level: 1 })).toContainText('Least net mass 8.16497\u00a0g')
  await expect(head.getByText('JCGM 100:2008 (GUM), 6.2.1')).toBeVisible()

  // What is wrong is said at its field, all at once, and nothing typed is lost.
  await head.getByLabel('Error of the mass').fill('1 %')
  await head.getByLabel('Coverage factor').fill('')
  await head.getByLabel('Smallest step of the scale').fill('0.5')
  await head.getByRole('button', { name: 'Work it out' }).click()
  await expect(head.getByRole('alert').filter({ hasText: '2 things are to be put right' })).toBeFocused()
  await expect(head.getByLabel('Error of the mass')).toHaveValue('1 %')
  await expect(head.getByLabel('Error of the mass')).toHaveAccessibleDescription(/Write a number here/)
  await expect(head.getByLabel('Coverage factor')).toHaveAccessibleDescription(/This is needed/)
  await expect(head.getByLabel('Smallest step of the scale')).toHaveValue('0.5')
  await expect(head.getByRole('region', { name: 'Answer' })).toBeHidden()

  // The calculation's own refusal is said in the same way.
  await head.getByLabel('Error of the mass').fill('100')
  await head.getByLabel('Coverage factor').fill('2')
  await head.getByLabel('Coverage factor').press('Enter')
  await expect(head.getByLabel('Error of the mass')).toHaveAccessibleDescription(/Must be less than 100\./)
  await head.getByLabel('Error of the mass').fill('2')
  await head.getByRole('button', { name: 'Work it out' }).click()

  // k · √(2 · d²/12) / e with d = 0.5, k = 2, e = 0.02, worked by hand: 20.4124.
  await expect(head.getByRole('heading', { level: 1 })).toContainText('Least net mass 20.4124\u00a0g')
  await expect(head.getByText('Invented example.')).toBeHidden()
  const address = await head.getByRole('link', { name: 'Link to this question' }).getAttribute('href')
  await early.goto(address ?? '')
  await expect(early.getByRole('heading', { level: 1 })).toContainText('Least net mass 20.4124\u00a0g')
  await expect(early.getByLabel('Smallest step of the scale')).toHaveValue('0.5')

  // On paper there is the question as a list, and no form.
  await early.emulateMedia({ media: 'print' })
  await expect(early.getByRole('button', { name: 'Work it out' })).toBeHidden()
  await expect(early.getByRole('region', { name: 'What is given' }).getByText('Error of the mass')).toBeVisible()
  await expect(early.getByRole('region', { name: 'Answer' })).toBeVisible()
})

test('a bakery that writes a decimal comma types and reads one', async ({ as, bakery, app }) => {
  await app.look.query("UPDATE bakery SET locale = 'de-DE' WHERE bakery_id = $1", [bakery.bakeryId])
  const page = await as(bakery.owner)
  await page.goto(question)
  await expect(page.getByLabel('Error of the mass')).toHaveValue('1')
  await expect(page.getByRole('heading', { level: 1 })).toContainText('8,16497\u00a0g')
  await page.goto(`${question}?errorShare=2&coverageFactor=2&resolutionG=0,5&repeatabilityG=0`)
  await expect(page.getByRole('heading', { level: 1 })).toContainText('20,4124\u00a0g')

  // Money too: 6240,5 cents over 60 planned and 57 good pieces, 104,00833… and 109,48245… by hand.
  await page.goto(
    '/calculators/cost/unit-costs?totalMinor=6240,5&plannedPieces=60&goodPieces=57&goodMassG=28500&goodVolumeMl=114000',
  )
  const answer = page.getByRole('region', { name: 'Answer' })
  await expect(answer).toContainText('104,0083')
  await expect(answer).toContainText('109,4825')
})

test('more than an address holds is answered in words, and so is what is not there', async ({
  as,
  bakery,
  expectNoise,
}) => {
  const page = await as(bakery.early)
  await page.goto(`${question}?errorShare=${'1+'.repeat(60_000)}`)
  await expect(page.getByRole('alert').filter({ hasText: 'too much for one address' })).toContainText(
    'npm run calc -- weighing/least-net-mass',
  )
  await page.goto(`${question}?errorShare=${'1+'.repeat(30_000)}&coverageFactor=2&resolutionG=1&repeatabilityG=0`)
  await expect(page.getByLabel('Error of the mass')).toHaveAccessibleDescription(/Write a number here/)
  expectNoise(/404/)
  expect((await page.goto('/calculators/weighing/a-ton-of-air'))?.status()).toBe(404)
  await page.goto('/calculators?find=a%20ton%20of%20air')
  await expect(page.getByRole('heading', { level: 1 })).toContainText('No calculation has to do with')
})

test('the reference of a subject has its every calculation, whole, with how it is called', async ({ as, bakery }) => {
  const page = await as(bakery.early)
  await page.goto('/calculators')
  const titles = await page.getByRole('region', { name: 'Weighing' }).getByRole('rowheader').allTextContents()
  expect(titles).toContain('Least mass a scale weighs well enough')
  await page.getByRole('link', { name: 'Reference of all' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toContainText('with what each asks, gives and rests on')
  await page.getByRole('link', { name: 'Weighing' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Weighing: 5 calculations')
  expect(await page.getByRole('article').getByRole('heading', { level: 2 }).allTextContents()).toEqual(titles)
  await expect(
    page.getByRole('article').filter({ hasText: 'weighing/least-net-mass' }).getByText('"leastNetMassG": 8.16'),
  ).toBeVisible()
})

test('a table of a question takes another row, keeps what was typed, and gives one up again', async ({
  as,
  bakery,
}) => {
  const page = await as(bakery.early)
  await page.goto('/calculators/weighing/plan-premix')
  const scales = page.getByRole('table', { name: 'Scales' })
  await expect(scales.getByRole('row')).toHaveCount(3)
  await page.getByLabel('Dose', { exact: true }).fill('0.8')
  await page.getByRole('button', { name: 'Add a row' }).click()
  await expect(scales.getByRole('row')).toHaveCount(4)
  await expect(page.getByLabel('Dose', { exact: true })).toHaveValue('0.8')
  await scales
    .getByRole('row')
    .nth(1)
    .getByRole('button', { name: /Remove/ })
    .click()
  await expect(scales.getByRole('row')).toHaveCount(3)
  await expect(scales.getByRole('row').nth(1).getByRole('textbox').first()).toHaveValue('fine')
  // The last row stays empty, and counts for nothing.
  await page.getByRole('button', { name: 'Work it out' }).click()
  await expect(page.getByRole('region', { name: 'Answer' })).toContainText('by a premix')
})
