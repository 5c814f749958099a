import { db } from '../../lib/db/client'
import { noteFoundCause } from '../../lib/kitchen/shifts/note-found-cause'
import { signFoundCause } from '../../lib/kitchen/shifts/sign-found-cause'
import { expect, test } from '../support/app'
import { callerOf, valueOf, type TestPerson } from '../support/bakery'
import { closeAsItIs } from '../support/close-as-it-is'
import { makeEndedTrial } from '../support/ended-trial'

test('a trial that is over becomes a new version: drafted, taken back, drafted again, signed by two', async ({
  as,
  bakery,
}) => {
  test.setTimeout(90_000)
  const { trialId, stores } = await makeEndedTrial(bakery, { now: new Date() })
  const [head, owner, early] = [await as(bakery.head), await as(bakery.owner), await as(bakery.early)]

  // A shift baker sees what is next, and that it is not theirs.
  await early.goto(`/trials/${trialId}/result`)
  await expect(early.getByText('The owner or the head baker decides what comes of it.')).toBeVisible()

  // The head baker drafts the change; what is missing is said at its field, and what was typed stays.
  await head.goto(`/trials/${trialId}/result`)
  await head.getByRole('link', { name: 'Decide on it' }).click()
  await head.getByLabel('Reason').first().fill('Larger, and the crumb holds.')
  await head.getByRole('button', { name: 'Draft the change' }).click()
  await expect(head.getByRole('main').getByRole('alert')).toContainText('This is needed')
  await expect(head.getByLabel('Reason').first()).toHaveValue('Larger, and the crumb holds.')
  await head.getByRole('radio', { name: /^Dough B/ }).check()
  await head.getByRole('button', { name: 'Draft the change' }).click()
  await expect(head.getByRole('heading', { level: 1 })).toContainText(
    'yoghurt, 10 % into version 2, waiting for the owner and the head baker',
  )
  await expect(
    head.getByText('It showed no difference worth having').or(head.getByText('It could not decide whether')),
  ).toBeVisible()
  await expect(head.getByText('now with milk').first()).toBeVisible()

  // It was the wrong dough: back, and again.
  await head.getByLabel('Why').fill('The wrong dough.')
  await head.getByRole('button', { name: 'Take it back' }).click()
  await expect(head.getByText('The wrong dough.')).toBeVisible()
  await head.goto(`/trials/${trialId}/decide`)
  await head.getByRole('radio', { name: /^Dough A/ }).check()
  await head.getByLabel('Reason').first().fill('Larger, and the crumb holds.')
  await head.getByRole('button', { name: 'Draft the change' }).click()
  await expect(head.getByRole('heading', { level: 1 })).toContainText('malt, 0.6 % into version 3')
  const decision = new URL(head.url()).pathname

  // No amount for the shift baker, and one for whoever signs.
  await early.goto(decision)
  await expect(early.getByRole('heading', { level: 1 })).toContainText('malt, 0.6 % into version 3')
  expect(await early.content()).not.toContain('€')
  await expect(head.getByText('beyond the 1 % from which the owner signs').first()).toBeVisible()

  for (const [page, person, button] of [
    [head, bakery.head, 'Sign version 3 as one of two'],
    [owner, bakery.owner, 'Sign version 3'],
  ] as const) {
    await page.goto(decision)
    await page.getByLabel('Your password').fill('not my password')
    await page.getByRole('button', { name: button, exact: true }).click()
    await expect(page.getByRole('main').getByRole('alert')).toContainText('That is not your password')
    await page.getByLabel('Your password').fill(person.password)
    await page.getByRole('button', { name: button, exact: true }).click()
    // In the table, not in the page's head, where the name stands from the start.
    await expect(page.getByRole('table', { name: 'Signatures' })).toContainText(person.name)
  }
  await expect(owner.getByRole('heading', { level: 1 })).toContainText('in production from')
  await expect(owner.getByRole('button', { name: 'Take it back' })).toBeHidden()

  // Everybody can look back: the history leads to why.
  await early.goto(`/formulas/${stores.formulaId}`)
  await expect(early.getByRole('heading', { level: 1 })).toContainText('Version 3 is in production')
  await early
    .getByRole('link', { name: /^Decision \d+$/ })
    .first()
    .click()
  await expect(early.getByText('The signatures cover it')).toBeVisible()
  const line = await db().formulaLine.findFirstOrThrow({
    where: { bakeryId: bakery.bakeryId, ingredientId: stores.ids.malt, version: { number: 3 } },
  })
  expect(line.pctFlour).toBeCloseTo(0.6, 6)
})

test('a trial may change nothing, and the reason is kept', async ({ as, bakery }) => {
  const { trialId } = await makeEndedTrial(bakery, { now: new Date() })
  const owner = await as(bakery.owner)
  await owner.goto(`/trials/${trialId}/decide`)
  await owner.getByLabel('Reason').last().fill('Not worth the money.')
  await owner.getByRole('button', { name: 'Keep the formula' }).click()
  await expect(owner.getByRole('heading', { level: 1 })).toContainText('kept as it is after trial')
  await owner.goto('/decisions')
  await expect(owner.getByRole('row', { name: /Not worth the money/ })).toBeVisible()
  await owner.goto(`/trials/${trialId}/decide`)
  await expect(owner.getByText('has decided on this trial already')).toBeVisible()
  await expect(owner.getByRole('button', { name: 'Keep the formula' })).toBeHidden()
})

test('a dough that was set aside with a friend makes nothing better where it is decided', async ({ as, bakery }) => {
  test.setTimeout(60_000)
  const now = new Date()
  const by = ({ sessionSecret, password }: TestPerson) => callerOf(sessionSecret, now, password)
  const { trialId } = await makeEndedTrial(bakery, {
    now,
    state: 'baking',
    content: { batchesPerArm: 2 },
    hugeMl: 700,
  })
  const huge = await db().batch.findFirstOrThrow({
    where: { trialId, kind: 'dough', arm: { position: 0 }, mixingDay: { number: 2 } },
    orderBy: { plannedOrder: 'asc' },
  })
  const cause = { batchId: huge.id, object: 'ingredient_left', what: 'The salt is in its tub.' }
  const { foundCauseId } = valueOf(await noteFoundCause.call(by(bakery.early), cause))
  valueOf(await signFoundCause.call(by(bakery.late), { foundCauseId, seenRevision: huge.revision }))
  await closeAsItIs(bakery, trialId, now)

  const head = await as(bakery.head)
  await head.goto(`/trials/${trialId}/decide`)
  const said = `Set aside for what was found after it was read: dough ${huge.code}.`
  await expect(head.getByText(said)).toBeVisible()
  await expect(head.getByText('It could not decide whether Dough A is better')).toBeVisible()
  await head.getByRole('radio', { name: /^Dough A/ }).check()
  await head.getByLabel('Reason').first().fill('It looks larger.')
  await head.getByRole('button', { name: 'Draft the change' }).click()
  await expect(head.getByRole('heading', { level: 1 })).toContainText('malt, 0.6 % into version 2')
  await expect(head.getByText(said)).toBeVisible()
  await expect(head.getByText('It could not decide whether Dough A: malt, 0.6 % is better')).toBeVisible()
  const evidence = head.getByRole('table', { name: 'The evidence, as it was frozen' })
  await expect(evidence).toContainText('undecided')
  await expect(evidence.getByText('better', { exact: true })).toBeHidden()
})
