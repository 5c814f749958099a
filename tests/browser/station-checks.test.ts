import { addEquipment } from '../../lib/kitchen/stores/add-equipment'
import { logReading } from '../../lib/kitchen/readings/log-reading'
import { v7 as uuid } from 'uuid'
import { expect, test } from '../support/app'
import { callerOf, valueOf, type TestBakery } from '../support/bakery'
import { enrolAndLogOn, keepNumber, openTablet, readyToRead, typeNumber, untilDraft } from '../support/tablet'

const owned = async (bakery: TestBakery, facts: object) =>
  valueOf(await addEquipment.call(callerOf(bakery.head.sessionSecret, new Date()), { note: '', ...facts })).equipmentId
const bench = { kind: 'scale', name: 'Bench scale', mostG: 5000, resolutionG: 1 }
const gauge = { kind: 'volume_gauge', name: 'Seed gauge', volumeMl: 3000 }
const probe = { kind: 'thermometer', name: 'Probe', resolutionC: 0.1 }

test('the checks of a day are made without a network, hold nobody up, and are in the book once that answers', async ({
  app,
  bakery,
  browser,
}) => {
  await owned(bakery, bench)
  await owned(bakery, probe)
  const { code, dough } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, tap, context, faults } = tablet
  await enrolAndLogOn(tablet, code)
  const row = page.getByRole('button', { name: /^Checks of the day/ })
  await expect(row).toContainText('2 to make: Bench scale, Probe')
  // A dough is opened as ever.
  await expect(page.getByRole('button', { name: new RegExp(`^${dough.code}`) })).toBeEnabled()

  await context.setOffline(true)
  await tap(row)
  await tap(page.getByRole('button', { name: /^Bench scale/ }))
  // Nobody has said what the test weight weighs, so it asks.
  await typeNumber(tablet, '5001')
  await expect(page.getByText('It carries 5,000 g at most.')).toBeVisible()
  await expect(page.getByRole('button', { name: 'Keep', exact: true })).toBeDisabled()
  for (const _ of '5001') await tap(page.getByRole('button', { name: 'Delete' }))
  await typeNumber(tablet, '1000')
  await tap(page.getByRole('button', { name: 'Go on with 1000 g' }))
  await keepNumber(tablet, '1001')
  await expect(page.getByRole('button', { name: /^Bench scale/ })).toContainText(/Good, \d\d:\d\d/)

  await tap(page.getByRole('button', { name: /^Probe/ }))
  await typeNumber(tablet, '1.2')
  await untilDraft(page, '1.2')
  await page.reload()
  await expect(page.getByText('1.2°C')).toBeVisible()
  await tap(page.getByRole('button', { name: /^Keep 1.2/ }))
  await expect(page.getByText(/that is 1\.2\s°C off, and 0\.5\s°C is allowed/)).toBeVisible()
  await tap(page.getByRole('button', { name: /it failed/ }))
  await expect(page.getByRole('button', { name: /^Probe/ })).toContainText(/Failed, \d\d:\d\d/)
  await tap(page.getByRole('button', { name: 'All doughs' }))
  await expect(row).toContainText('Failed: Probe')
  await expect(page.getByText('2 on this tablet, not sent yet')).toBeVisible()

  await context.setOffline(false)
  await page.clock.fastForward(60_000)
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  const { rows } = await app.look.query(
    'SELECT mass_g, shown_g, shown_c, is_good, person_id FROM equipment_check WHERE bakery_id = $1 ORDER BY mass_g NULLS LAST',
    [bakery.bakeryId],
  )
  const personId = bakery.early.personId
  expect(rows).toEqual([
    { mass_g: 1000, shown_g: 1001, shown_c: null, is_good: true, person_id: personId },
    { mass_g: null, shown_g: null, shown_c: 1.2, is_good: false, person_id: personId },
  ])
  expect(faults).toEqual([])
  await context.close()
})

test('the desk checks a scale, and says at the dough what was read around a failed check', async ({ bakery, as }) => {
  await owned(bakery, { ...bench, testMassG: 1000 })
  const { dough, trial } = await readyToRead(bakery)
  const now = new Date()
  valueOf(
    await logReading.call(callerOf(bakery.early.sessionSecret, now), {
      id: uuid(),
      batchId: dough.batchId,
      measureId: trial.measures['dough-mass'],
      piece: 1,
      repeat: 1,
      value: '912',
      unit: 'g',
      takenAt: now.toISOString(),
      confirmed: true,
    }),
  )
  const page = await as(bakery.early)
  await page.goto('/shift')
  await page.getByRole('link', { name: 'One check of the day to make' }).click()
  const form = page.getByRole('region', { name: 'Bench scale' })
  await expect(form).toContainText('put 1,000 g on it')
  await form.getByLabel('What it shows, g').fill('1,004')
  await form.getByRole('button', { name: 'Keep the check of Bench scale' }).click()
  // It may be one and a bit, or a thousand and four: that is asked back.
  await expect(form.getByLabel('What it shows, g')).toHaveAttribute('aria-invalid', 'true')
  await form.getByLabel('What it shows, g').fill('1004')
  await form.getByRole('button', { name: 'Keep the check of Bench scale' }).click()
  await expect(form).toContainText('It failed today')
  await expect(page.getByRole('listitem').filter({ hasText: 'Failed' })).toContainText('with 1,000 g on it')
  await page.goto('/shift')
  await expect(page.getByText('Failed its last check: Bench scale')).toBeVisible()
  await page.goto(`/shift/${dough.batchId}`)
  await expect(
    page.getByText(/^Read with Bench scale before its failed check of .*: Dough weight \(1\)\.$/),
  ).toBeVisible()
})

test('a volume gauge is checked with its block without a network, and what it reads is marked once it failed', async ({
  app,
  bakery,
  browser,
}) => {
  await owned(bakery, gauge)
  const { code } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, tap, context, faults } = tablet
  await enrolAndLogOn(tablet, code)
  await context.setOffline(true)
  await tap(page.getByRole('button', { name: /^Checks of the day/ }))
  const row = page.getByRole('button', { name: /^Seed gauge/ })
  await tap(row)
  // Nobody has said the volume of the block, so it asks.
  await expect(page.getByRole('heading', { name: 'Seed gauge: block' })).toBeVisible()
  await typeNumber(tablet, '3001')
  await expect(page.getByText('It holds 3,000 mL at most.')).toBeVisible()
  await expect(page.getByRole('button', { name: 'Keep', exact: true })).toBeDisabled()
  for (const _ of '3001') await tap(page.getByRole('button', { name: 'Delete' }))
  await typeNumber(tablet, '1000')
  await tap(page.getByRole('button', { name: 'Go on with 1000 mL' }))
  await expect(page.getByText(/Put the block of 1,000\smL in/)).toBeVisible()
  await expect(page.getByText(/It may be off by 20\smL/)).toBeVisible()
  await typeNumber(tablet, '1021')
  await tap(page.getByRole('button', { name: /^Keep 1021/ }))
  await expect(page.getByText(/that is 21\smL off, and 20\smL is allowed/)).toBeVisible()
  await tap(page.getByRole('button', { name: /it failed/ }))
  await expect(row).toContainText(/Failed, \d\d:\d\d/)

  await context.setOffline(false)
  await page.clock.fastForward(60_000)
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  const { rows } = await app.look.query(
    'SELECT block_ml, shown_ml, off_most_ml, mass_g, shown_c, is_good FROM equipment_check WHERE bakery_id = $1',
    [bakery.bakeryId],
  )
  expect(rows).toEqual([
    { block_ml: 1000, shown_ml: 1021, off_most_ml: 20, mass_g: null, shown_c: null, is_good: false },
  ])
  expect(faults).toEqual([])
  await context.close()
})

test('the desk checks a volume gauge, and says at the dough which volumes were read before it failed', async ({
  bakery,
  as,
}) => {
  await owned(bakery, gauge)
  const { dough, trial } = await readyToRead(bakery)
  const now = new Date()
  valueOf(
    await logReading.call(callerOf(bakery.early.sessionSecret, now), {
      id: uuid(),
      batchId: dough.batchId,
      measureId: trial.measures['loaf-volume'],
      piece: 1,
      repeat: 1,
      value: '2400',
      unit: 'mL',
      takenAt: now.toISOString(),
      confirmed: true,
    }),
  )
  const page = await as(bakery.early)
  await page.goto('/shift/checks')
  const form = page.getByRole('region', { name: 'Seed gauge' })
  await expect(form).toContainText('It may be off by 2 % of the block.')
  await form.getByLabel('How much more it shows, mL').fill('1030')
  await form.getByLabel('Volume of the block, mL').fill('3500')
  await form.getByRole('button', { name: 'Keep the check of Seed gauge' }).click()
  await expect(form.getByLabel('Volume of the block, mL')).toHaveAttribute('aria-invalid', 'true')
  // What was typed beside it stays.
  await expect(form.getByLabel('How much more it shows, mL')).toHaveValue('1030')
  await form.getByLabel('Volume of the block, mL').fill('1000')
  await form.getByRole('button', { name: 'Keep the check of Seed gauge' }).click()
  await expect(form).toContainText('It failed today')
  const made = page.getByRole('listitem').filter({ hasText: 'Failed' })
  await expect(made).toContainText('with a block of 1,000 mL')
  await expect(made).toContainText('might be off by 20 mL')
  await page.goto(`/shift/${dough.batchId}`)
  await expect(
    page.getByText(/^Read with Seed gauge before its failed check of .*: Loaf volume \(1\)\.$/),
  ).toBeVisible()
})
