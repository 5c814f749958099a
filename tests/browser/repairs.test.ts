import { expect, test } from '../support/app'
import { makeApprovedTrial } from '../support/approved-trial'

const tablet = { viewport: { width: 1080, height: 810 }, hasTouch: true, locale: 'en-GB' }

test('a batch that is lost is baked again at a tap, where the loss is shown, by anybody on the shift', async ({
  bakery,
  as,
}) => {
  const { batches } = await makeApprovedTrial(bakery, { arms: 3, now: new Date() })
  const [lost, other] = [batches[0]!, batches[1]!]
  const page = await as(bakery.early, tablet)
  await page.goto(`/shift/${lost.batchId}`)
  await page.getByRole('button', { name: 'Begin: weigh out' }).click()
  await page.getByText('Something went wrong').click()
  await page.getByLabel('Why is it lost or set aside?').fill('The bowl fell')
  await page.getByRole('button', { name: 'The batch is lost' }).click()
  const sentence = `Batch ${lost.code} was lost. Bake it again today.`
  await expect(page.getByText(sentence)).toBeVisible()
  await expect(page.getByText(/control/i)).toHaveCount(0)

  await page.goto('/shift')
  await expect(page.getByText(sentence)).toBeVisible()
  await page.getByRole('button', { name: `Bake it again: batch ${lost.code}` }).click()
  await expect(page.getByText(sentence)).toHaveCount(0)
  await expect(page.getByText(/^baked again as \d{3}$/)).toBeVisible()

  await page.goto(`/shift/${lost.batchId}`)
  await expect(page.getByRole('button', { name: /^Take it back/ })).toHaveCount(0)
  await page
    .getByRole('main')
    .getByRole('link', { name: /^Batch \d{3}$/ })
    .click()
  await expect(page.getByText(`It is baked for batch ${lost.code}, which is out.`)).toBeVisible()

  await page.getByText('Exchange its place').click()
  await page.getByLabel(`Batch ${other.code}, place 2`).check()
  await page.getByLabel('Why?').fill('Its tins are free')
  await page.getByRole('button', { name: 'Exchange the places' }).click()
  await expect(page.getByText('Its place in the day was exchanged: it is 2, and was 4 before.')).toBeVisible()
})

test('the head baker adds a whole day for one that is short, and the result tells it; a shift baker sees no such button', async ({
  bakery,
  as,
}) => {
  const { batches, trialId } = await makeApprovedTrial(bakery, { arms: 3, days: 2, now: new Date() })
  const floor = await as(bakery.early)
  await floor.goto(`/shift/${batches[0]!.batchId}`)
  await floor.getByText('It will not be baked').click()
  await floor.getByLabel('Why is it not baked?').fill('No flour')
  await floor.getByRole('button', { name: 'Not baked' }).click()
  await expect(floor.getByText('Bake it on its mixing day after all')).toBeVisible()
  await floor.goto(`/trials/${trialId}`)
  await expect(floor.getByText('Mixing day 1 is one batch short.')).toBeVisible()
  await expect(floor.getByRole('button', { name: 'Add a whole day' })).toHaveCount(0)

  const desk = await as(bakery.head)
  await desk.goto(`/trials/${trialId}/result`)
  await expect(desk.getByText('One mixing day is short of a dough.')).toBeVisible()
  await desk.getByRole('link', { name: 'Put it right' }).click()
  await desk.getByRole('button', { name: 'Add a whole day for mixing day 1' }).click()
  const told = 'Mixing day 3 was added, because mixing day 1 was short of a dough'
  await expect(desk.getByText(told)).toBeVisible()
  await expect(desk.getByLabel('Mixing day 3')).toBeVisible()
  await desk.goto(`/trials/${trialId}/result`)
  await expect(desk.getByText(told)).toBeVisible()
  await expect(desk.getByText('One mixing day is short of a dough.')).toHaveCount(0)
  await floor.goto('/shift')
  await expect(floor.getByText('Mixing day 3')).toBeVisible()
})
