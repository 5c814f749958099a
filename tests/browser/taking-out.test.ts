import { v7 as uuid } from 'uuid'
import { logReading } from '../../lib/kitchen/readings/log-reading'
import { beginBatch } from '../../lib/kitchen/shifts/begin-batch'
import { expect, test } from '../support/app'
import { holdScripts } from '../support/hold-scripts'
import { makeApprovedTrial } from '../support/approved-trial'
import { callerOf, valueOf, type TestBakery } from '../support/bakery'

const tablet = { viewport: { width: 1080, height: 810 }, hasTouch: true, locale: 'en-GB' }

async function begun(bakery: TestBakery) {
  const now = new Date()
  const { batches, measures } = await makeApprovedTrial(bakery, { now })
  const [{ batchId }, waiting] = [batches[0]!, batches[1]!.batchId]
  valueOf(
    await beginBatch.call(callerOf(bakery.early.sessionSecret, now), {
      batchId,
      seenRevision: 1,
      cleanDownDone: false,
    }),
  )
  const read = async () =>
    valueOf(
      await logReading.call(callerOf(bakery.early.sessionSecret, new Date()), {
        id: uuid(),
        batchId,
        measureId: measures['loaf-volume'],
        piece: 1,
        repeat: 1,
        value: '1900',
        unit: 'mL',
        takenAt: new Date().toISOString(),
      }),
    )
  return { batchId, waiting, read }
}

test('once a batch is read it counts, and its page says why and what can be done', async ({ bakery, as }) => {
  const { batchId, read } = await begun(bakery)
  await read()
  const page = await as(bakery.early, tablet)
  await page.goto(`/shift/${batchId}`)
  await page.getByText('Something went wrong').click()
  await expect(page.getByText('it counts. Note above what happened')).toBeVisible()
  await expect(page.getByRole('button', { name: 'Set it aside' })).toHaveCount(0)
  await page.getByText('Note what happened').click()
  await page.getByLabel('What happened?').fill('The tray fell')
  await page.getByRole('button', { name: 'Note it' }).click()
  await expect(page.getByText(/The tray fell \(noticed .*, noted .*, Esi\)/)).toBeVisible()
  await expect(page.getByRole('button', { name: 'Set it aside' })).toHaveCount(0)
})

test('a note that is half typed is there after a reload, also where its part was opened before the page’s script came', async ({
  bakery,
  as,
}) => {
  const { batchId } = await begun(bakery)
  const page = await as(bakery.early, tablet)
  await page.goto(`/shift/${batchId}`)
  await page.getByText('Note what happened').click()
  await page.getByLabel('What happened?').fill('The tray')
  await expect.poll(() => page.evaluate(() => JSON.stringify(localStorage))).toContain('The tray')
  const letThrough = await holdScripts(page)
  await page.reload({ waitUntil: 'commit' })
  await page.getByText('Note what happened').click()
  letThrough()
  await expect(page.getByLabel('What happened?')).toHaveValue('The tray')
})

test('a batch with a note from before is set aside after it was read, and a page that is older is told why not', async ({
  bakery,
  as,
}) => {
  const { batchId, read } = await begun(bakery)
  const page = await as(bakery.early, tablet)
  await page.goto(`/shift/${batchId}`)
  await page.getByText('Something went wrong').click()
  await page.getByLabel('Why is it lost or set aside?').fill('No salt in it')
  // Somebody else reads it meanwhile; the page waits with that, because a form is begun.
  await read()
  await page.getByRole('button', { name: 'Set it aside' }).click()
  await expect(page.getByText('It counts: note what happened, go on')).toBeVisible()

  const other = await begun(bakery)
  await page.goto(`/shift/${other.batchId}`)
  await page.getByText('Note what happened').click()
  await page.getByLabel('What happened?').fill('No salt in it')
  await page.getByRole('button', { name: 'Note it' }).click()
  await expect(page.getByText(/No salt in it \(noticed/)).toBeVisible()
  await other.read()
  await page.reload()
  await page.getByText('Something went wrong').click()
  await page.getByLabel('Why is it lost or set aside?').fill('No salt in it')
  await page.getByRole('button', { name: 'Set it aside' }).click()
  await expect(page.getByText('Why: No salt in it')).toBeVisible()
})

test('a batch that waits is not baked, for a reason', async ({ bakery, as }) => {
  const { waiting } = await begun(bakery)
  const page = await as(bakery.early, tablet)
  await page.goto(`/shift/${waiting}`)
  await page.getByText('It will not be baked').click()
  await expect(page.getByRole('button', { name: 'The batch is lost' })).toHaveCount(0)
  await page.getByLabel('Why is it not baked?').fill('The oven is cold')
  await page.getByRole('button', { name: 'Not baked', exact: true }).click()
  await expect(page.getByText('Why: The oven is cold')).toBeVisible()
  await expect(page.getByText('There is nothing to read.')).toBeVisible()
})

test('what is found later waits for a second person, who sets the batch aside', async ({ bakery, as }) => {
  const { batchId, read } = await begun(bakery)
  await read()
  const page = await as(bakery.early, tablet)
  await page.goto(`/shift/${batchId}`)
  await page.getByText('Something was found later').click()
  await page.getByLabel('What is wrong with the batch?').fill('The salt is in its tub')
  await page.getByRole('button', { name: 'An ingredient that was left' }).click()
  await expect(page.getByText(/The salt is in its tub \(found .*, Esi; shown by: an ingredient/)).toBeVisible()
  await expect(page.getByText('A second person has to see it and sign it.')).toBeVisible()
  await expect(page.getByRole('button', { name: 'I have seen it' })).toHaveCount(0)

  const second = await as(bakery.late, tablet)
  await second.goto(`/shift/${batchId}`)
  await second.getByRole('button', { name: 'I have seen it' }).click()
  await expect(second.getByText('Why: The salt is in its tub')).toBeVisible()
  await expect(second.getByText('Seen and signed by Lars.')).toBeVisible()
})
