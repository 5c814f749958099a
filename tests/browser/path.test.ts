import type { Page } from 'playwright/test'
import { db } from '../../lib/db/client'
import { enterPrice } from '../../lib/kitchen/stores/enter-price'
import { expect, test } from '../support/app'
import { callerOf, valueOf, type TestPerson } from '../support/bakery'
import { chooseIngredient } from '../support/choose-ingredient'
import { makeIngredients } from '../support/ingredients'
import { expectOwnPlanRefused } from '../support/path/own-plan'
import { bakeBatch } from '../support/path/bake-batch'
import { figuresAgain, type BakedBatch } from '../support/path/figures-again'
import { pieces as piecesBaked, readingsOf } from '../support/path/invented-readings'

/** What the formula of this test says, on flour. */
const lines = [
  { name: 'Bread flour', pct: 100 },
  { name: 'Water', pct: 62 },
  { name: 'Salt', pct: 2 },
  { name: 'Fresh yeast', pct: 2.5 },
  { name: 'Sugar', pct: 3 },
] as const
const [pieces, scalingG, lossPct] = [4, 800, 2]
const planted = '987.65'
/** What 25 kg cost, invented. */
const prices = [
  ['breadFlour', 'Bread flour', '22'],
  ['water', 'Water', '0'],
  ['salt', 'Salt', '9'],
  ['freshYeast', 'Fresh yeast', '4'],
  ['sugar', 'Sugar', '25'],
  ['honey', 'Honey', planted],
] as const

async function sign(page: Page, person: TestPerson, button: string) {
  await page.getByLabel('Your password').fill('not my password')
  await page.getByRole('button', { name: button }).click()
  await expect(page.getByRole('main').getByRole('alert')).toContainText('That is not your password')
  await page.getByLabel('Your password').fill(person.password)
  await page.getByRole('button', { name: button }).click()
}

// A trace of four pages over a hundred readings and more takes much of the time that the walk itself has.
test.use({ trace: 'off' })

test('four people: a formula is signed off, a trial proposed against it, approved, weighed out, baked, weighed up, decided, signed by two, and in production', async ({
  as,
  bakery,
  expectNoise,
}) => {
  test.setTimeout(300_000)
  const ids = await makeIngredients(bakery.bakeryId, new Date())
  const headCaller = callerOf(bakery.head.sessionSecret, new Date())
  const today = new Date().toISOString().slice(0, 10)
  for (const [key, , packPrice] of prices) {
    valueOf(
      await enterPrice.call(headCaller, {
        ingredientId: ids[key],
        holdsFrom: today,
        packMassG: 25_000,
        packPrice,
        supplier: 'Invented mill',
      }),
    )
  }
  const [head, owner, early, late] = [
    await as(bakery.head),
    await as(bakery.owner),
    await as(bakery.early),
    await as(bakery.late),
  ]

  // The head baker writes down what is baked today.
  await head.goto('/formulas/new')
  await head.getByLabel('Name of the formula').fill('Mill tin')
  await head.getByLabel('Reason').fill('What we bake today.')
  for (const [label, value] of [
    ['Pieces', pieces],
    ['Scaling weight', scalingG],
    ['Dough loss', lossPct],
    ['Dough temperature', 26],
    ['Mixing', 10],
    ['Bulk', 40],
    ['Proof', 50],
    ['Bake temperature', 225],
    ['Bake', 32],
  ] as const) {
    await head.getByRole('textbox', { name: new RegExp(`^${label}( \\(|$)`) }).fill(String(value))
  }
  for (const [at, line] of lines.entries()) {
    const row = `Line ${at + 1} of stage 1`
    if ((await head.getByLabel(`${row}: Ingredient`).count()) === 0)
      await head.getByRole('button', { name: 'Add a line' }).click()
    await chooseIngredient(head.getByRole('combobox', { name: `${row}: Ingredient` }), line.name)
    await head.getByLabel(`${row}: On flour, %`).fill(at === 0 ? '90' : String(line.pct))
  }
  await head.getByRole('button', { name: 'Keep the draft' }).click()
  await expect(head.getByRole('main').getByRole('alert')).toBeVisible()
  await expect(head.getByLabel('Name of the formula')).toHaveValue('Mill tin')
  await head.getByLabel('Line 1 of stage 1: On flour, %').fill('100')
  await head.getByRole('button', { name: 'Keep the draft' }).click()
  await expect(head.getByRole('heading', { level: 1 })).toContainText('Version 1 is a draft')
  await expect(head.getByText('You drafted this version. A second person signs it')).toBeVisible()
  const version = new URL(head.url()).pathname

  // The owner signs it off; a wrong password signs nothing.
  await owner.goto(version)
  await sign(owner, bakery.owner, 'Sign version 1')
  await expect(owner.getByRole('heading', { level: 1 })).toContainText('Version 1 is in production')
  await head.goto(`${version}/edit`)
  await expect(head.getByLabel('Reason')).toBeHidden()

  // A shift baker proposes a trial against it.
  await early.goto('/trials/new')
  await early.getByLabel('Question', { exact: true }).fill('Does honey lift the mill tin enough to pay for itself?')
  await early.getByLabel('Formula', { exact: true }).selectOption({ label: 'Mill tin, version 1' })
  await early.getByLabel(/^Mixing days/).fill('4')
  await early.getByLabel('Doughs of each kind on a day').fill('1')
  await early.getByLabel('Loaves or pieces from a dough').fill(String(piecesBaked))
  await early.getByLabel('Name', { exact: true }).fill('honey, 5 %')
  await chooseIngredient(early.getByRole('combobox', { name: 'Ingredient', exact: true }), 'Honey')
  await early.getByLabel('Dose', { exact: true }).fill('much')
  await early.getByLabel('Tap water, cold').fill('12')
  await early.getByRole('button', { name: 'Keep the draft' }).click()
  await expect(early.getByLabel('Dose', { exact: true })).toHaveAccessibleDescription(/number/)
  await early.getByLabel('Dose', { exact: true }).fill('5')
  await early.getByRole('button', { name: 'Keep the draft' }).click()
  await early.getByRole('button', { name: 'Propose the plan' }).click()
  await expect(
    early
      .getByText('The head baker or the owner decides on it.')
      .or(early.getByText('A second person decides.'))
      .first(),
  ).toBeVisible()
  const trial = new URL(early.url()).pathname
  // Costs are for the head baker and the owner: nowhere in what a shift baker is sent, not even of their own plan.
  expect(await early.content()).not.toContain('€')
  await early.goto('/stores')
  expect(await early.content()).not.toContain(planted)

  // Nobody approves their own: not even the head baker.
  await expectOwnPlanRefused(head)

  // A colleague cannot decide; the head baker sends it back with a note, then approves.
  await late.goto(trial)
  await expect(late.getByRole('button', { name: 'Sign the decision' })).toBeHidden()
  await head.goto(trial)
  await expect(head.getByText('€').first()).toBeVisible()
  await head.getByLabel(/^Approve/).check()
  await sign(head, bakery.head, 'Sign the decision')
  await expect(head.getByText('This plan is approved, and nothing of it changes any more')).toBeVisible()
  expectNoise(/404 \(Not Found\)/)
  await early.goto(`${trial}/edit`)
  await expect(early.getByLabel('Question', { exact: true })).toBeHidden()

  // The weigh-out sheet, worked out again here: masses on flour from pieces, scaling weight and loss; honey brings
  // water and sugars, which are taken out of the water and the sugar, all totals as in the control.
  const doughG = (piecesBaked * scalingG) / (1 - lossPct / 100)
  const flourG = (doughG * 100) / lines.reduce((sum, line) => sum + line.pct, 0)
  const honeyG = 0.05 * flourG
  const { waterShare, sugarsShare } = { waterShare: 0.18, sugarsShare: 0.8 }
  const expected = {
    control: { 'Bread flour': flourG, Water: 0.62 * flourG, Sugar: 0.03 * flourG },
    arm: {
      'Bread flour': flourG,
      Water: 0.62 * flourG - waterShare * honeyG,
      Sugar: Math.max(0, 0.03 * flourG - sugarsShare * honeyG),
      Honey: honeyG,
    },
  }
  const trialId = trial.split('/').at(-1)!
  const kept = await db().armLine.findMany({
    where: { bakeryId: bakery.bakeryId, arm: { trialId } },
    select: {
      weighedG: true,
      massG: true,
      ingredient: { select: { name: true } },
      arm: { select: { position: true } },
    },
  })
  const massOf = (position: number, name: string) =>
    kept
      .filter((line) => line.arm.position === position && line.ingredient.name === name)
      .reduce((sum, line) => sum + line.massG, 0)
  for (const [name, massG] of Object.entries(expected.control))
    expect(massOf(0, name), `control, ${name}`).toBeCloseTo(massG, 6)
  for (const name of ['Bread flour', 'Honey'] as const)
    expect(massOf(1, name), `dough A, ${name}`).toBeCloseTo(expected.arm[name], 6)
  const sugarsOf = (position: number) =>
    massOf(position, 'Sugar') + (position === 1 ? sugarsShare * massOf(1, 'Honey') : 0)
  const waterOf = (position: number) =>
    massOf(position, 'Water') +
    0.14 * massOf(position, 'Bread flour') +
    0.7 * massOf(position, 'Fresh yeast') +
    (position === 1 ? waterShare * massOf(1, 'Honey') : 0)
  expect(waterOf(1)).toBeCloseTo(waterOf(0), 6)
  expect(sugarsOf(1) - sugarsOf(0)).toBeCloseTo(Math.max(0, sugarsShare * honeyG - 0.03 * flourG), 6)

  await late.goto(`${trial}/weigh-out`)
  await late.getByRole('button', { name: 'Open the key' }).click()
  await expect(late.getByText('You know the key.')).toBeVisible()
  for (const line of kept.filter(({ weighedG }) => weighedG > 0)) {
    const shown = new Intl.NumberFormat('en-GB', { minimumFractionDigits: 1, maximumFractionDigits: 1 }).format(
      line.weighedG,
    )
    await expect(late.getByText(shown).first(), line.ingredient.name).toBeVisible()
  }

  // The shift bakers bake every dough in the drawn order, by its code, and read each loaf.
  const drawn = await db().batch.findMany({
    where: { bakeryId: bakery.bakeryId, trialId },
    select: { code: true, arm: { select: { position: true } }, mixingDay: { select: { number: true } } },
    orderBy: [{ mixingDay: { number: 'asc' } }, { plannedOrder: 'asc' }],
  })
  expect(drawn).toHaveLength(8)
  const baked: BakedBatch[] = []
  // Each page that is open follows the book and is made anew with every reading; what that shows is looked at elsewhere.
  for (const waits of [head, owner]) await waits.goto('about:blank')
  for (const [
    at,
    {
      code,
      arm: { position: arm },
      mixingDay: { number: day },
    },
  ] of drawn.entries()) {
    const readings = readingsOf(arm, day)
    const page = at % 2 === 0 ? early : late
    await bakeBatch(page, code, readings)
    await page.goto('about:blank')
    baked.push({ arm, day, readings })
    if (at !== 3) continue
    // Half of it is in: nobody sees a comparison, or which dough is which.
    await owner.goto(`${trial}/result`)
    await expect(owner.getByRole('heading', { level: 1 })).toContainText('4 of 8 doughs are in')
    await expect(owner.getByRole('table', { name: 'The numbers' })).toHaveCount(0)
    await expect(owner.getByRole('table', { name: 'The doughs' }).getByText('honey')).toHaveCount(0)
    await owner.goto(trial)
    await expect(owner.getByRole('table', { name: 'Order of baking' })).not.toContainText('honey')
    await owner.goto('about:blank')
  }

  // The head baker ends the baking, and the result is what the readings come to when they are worked out again here.
  await head.goto(`${trial}/result`)
  await expect(head.getByRole('heading', { level: 1 })).toContainText('still to be closed')
  await expect(head.getByRole('table', { name: 'The numbers' })).toHaveCount(0)
  await head.getByRole('button', { name: 'Close the readings' }).click()
  await expect(head.getByRole('table', { name: 'The numbers' })).toBeVisible()
  const again = figuresAgain(baked)
  await early.goto(`${trial}/result`)
  const numbers = early.getByRole('table', { name: 'The numbers' })
  const control = numbers.getByRole('row', { name: /control/i })
  const test1 = numbers.getByRole('row', { name: /honey/ })
  const shown = async (row: typeof control, cell: number) =>
    (await row.getByRole('cell').nth(cell).innerText())
      .match(/[-−+]?\d+(\.\d+)?/g)
      ?.map((each) => Number(each.replace('−', '-'))) ?? []
  expect(await shown(control, 1)).toEqual([expect.closeTo(again.control, 2)])
  expect(await shown(test1, 1)).toEqual([expect.closeTo(again.test, 2)])
  expect(await shown(test1, 2)).toEqual([
    expect.closeTo(again.pct, 1),
    expect.closeTo(again.lowPct, 1),
    expect.closeTo(again.highPct, 1),
  ])
  expect(await shown(test1, 3)).toEqual([expect.closeTo(again.difference, 2)])
  await expect(test1).toContainText('clearly better')

  // What a loaf costs more, worked out again from the weigh-out sheet and the prices above; nobody on the shift sees it.
  expect(await early.content()).not.toContain('€')
  const price = Object.fromEntries(prices.map(([, name, packPrice]) => [name, Number(packPrice) / 25_000]))
  // By the formula's scaling weight: a dough that came out heavier is no dearer loaf.
  const loafCost = (position: number) => {
    const own = kept.filter((line) => line.arm.position === position)
    const massG = own.reduce((sum, line) => sum + line.massG, 0)
    const total = own.reduce((sum, line) => sum + line.massG * (price[line.ingredient.name] ?? Number.NaN), 0)
    return (total * scalingG) / (1 - lossPct / 100) / massG
  }
  await owner.goto(`${trial}/result`)
  const cost = owner.getByRole('table', { name: 'What it costs and gives' })
  const [controlCost, honeyCost] = [
    await shown(cost.getByRole('row', { name: /control/i }), 0),
    await shown(cost.getByRole('row', { name: /honey/ }), 0),
  ]
  expect(controlCost).toEqual([expect.closeTo(loafCost(0), 2)])
  expect(honeyCost).toEqual([expect.closeTo(loafCost(1), 2), expect.closeTo(loafCost(1) - loafCost(0), 2)])
  await expect(
    owner.getByRole('table', { name: /Ingredient cost by dough/ }).getByRole('row', { name: /honey/ }),
  ).toContainText('0 of 8')

  // The head baker drafts the change and signs it; it costs more than the limit, so the owner signs it too.
  await head.goto(`${trial}/decide`)
  await head.getByRole('radio', { name: /^Dough A/ }).check()
  await head.getByLabel('Reason').first().fill('Larger by far, and the customers ask for honey.')
  await head.getByRole('button', { name: 'Draft the change' }).click()
  await expect(head.getByRole('heading', { level: 1 })).toContainText(
    'honey, 5 % into version 2, waiting for the owner and the head baker',
  )
  const decision = new URL(head.url()).pathname
  await late.goto(decision)
  expect(await late.content()).not.toContain('€')
  await expect(late.getByLabel('Your password')).toBeHidden()
  await sign(head, bakery.head, 'Sign version 2 as one of two')
  await expect(head.getByText('You have signed')).toBeVisible()
  await owner.goto(decision)
  await sign(owner, bakery.owner, 'Sign version 2')
  await expect(owner.getByRole('heading', { level: 1 })).toContainText('in production from')

  // The new version is the dough that was baked, and everybody can look back at why.
  await late.goto(new URL(version, late.url()).pathname.replace(/\/versions.*$/, ''))
  await expect(late.getByRole('heading', { level: 1 })).toContainText('Version 2 is in production')
  await expect(late.getByText('Larger by far, and the customers ask for honey.').first()).toBeVisible()
  const now = await db().formulaLine.findMany({
    where: { bakeryId: bakery.bakeryId, version: { number: 2 } },
    select: { pctFlour: true, ingredient: { select: { name: true } } },
  })
  for (const { pctFlour, ingredient } of now)
    expect(pctFlour, ingredient.name).toBeCloseTo((100 * massOf(1, ingredient.name)) / flourG, 4)
  await late
    .getByRole('link', { name: /^Decision \d+$/ })
    .first()
    .click()
  await expect(late.getByText('The signatures cover it')).toBeVisible()
})
