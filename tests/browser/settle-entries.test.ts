import { v7 as uuid } from 'uuid'
import { takeEntries } from '../../lib/kitchen/intake/take-entries'
import { settleEntry } from '../../lib/kitchen/readings/settle-entry'
import { correctReading } from '../../lib/kitchen/readings/correct-reading'
import { expect, test } from '../support/app'
import { callerOf, valueOf, type TestPerson } from '../support/bakery'
import { walkEntryAside } from '../support/walks/shift'

const asSelf = (person: TestPerson) => callerOf(person.sessionSecret, new Date())

test('an entry that came too late leads from the first page to where it is settled, and into the book', async ({
  as,
  bakery,
  app,
}) => {
  const { there } = await walkEntryAside({ bakery, neighbour: bakery, look: app.look })
  const page = await as(bakery.head)
  await page.goto('/')
  const waits = page.getByRole('region', { name: 'Waits for you' })
  await expect(waits.getByText('One entry is kept aside for you to settle')).toBeVisible()
  await waits.getByRole('link', { name: 'an entry came too late' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('One entry waits to be settled')

  await page.goto('/shift')
  await page.getByRole('link', { name: 'One entry is kept aside: settle it' }).click()
  const entry = page.getByRole('article')
  await expect(entry.getByRole('heading')).toContainText('Dough temperature')
  const rows = entry.getByRole('row')
  await expect(rows.nth(1)).toContainText(/Kept aside.*27\.1.°C/)
  await expect(rows.nth(2)).toContainText(/In the book.*26\.4.°C.*Esi/)
  await expect(entry).toContainText('A reading was in its place already.')

  // Nothing is chosen beforehand, and a reason is asked for.
  await entry.getByRole('button', { name: 'Settle' }).click()
  await expect(entry.getByRole('alert')).toContainText('Put right what is marked below.')
  await expect(entry.getByLabel('Why?')).toHaveAttribute('aria-invalid', 'true')
  await expect(entry.getByRole('radiogroup')).toHaveAttribute('aria-invalid', 'true')
  await expect(entry.getByRole('alert')).toBeFocused()

  await entry.getByLabel('Into the book').check()
  await entry.getByLabel('Why?').fill('Read off the probe that is calibrated.')
  await entry.getByRole('button', { name: 'Settle' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Nothing is kept aside')
  await expect(page.getByRole('heading', { level: 2, name: 'Kept aside' })).toBeFocused()
  const { rows: kept } = await app.look.query<{ value_entered: string; reason: string }>(
    'SELECT value_entered, reason FROM reading WHERE supersedes_id = $1',
    [there.id],
  )
  expect(kept).toEqual([{ value_entered: '27.1', reason: 'Read off the probe that is calibrated.' }])
  await page.goto('/shift')
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
  await expect(page.getByRole('link', { name: 'kept aside' })).toHaveCount(0)
})

test('an entry that is left changes nothing in the book, and the others stay', async ({ as, bakery, app }) => {
  const { there } = await walkEntryAside({ bakery, neighbour: bakery, look: app.look })
  const third = { ...there, id: uuid(), value: '25.9' }
  valueOf(await takeEntries.call(asSelf(bakery.late), { entries: [third] }))
  const page = await as(bakery.owner)
  await page.goto('/shift/kept-aside')
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('2 entries wait to be settled')
  const first = page.getByRole('article').filter({ hasText: '27.1' })
  await first.getByLabel('Leave it aside').check()
  await first.getByLabel('Why?').fill('The same probe, read twice.')
  await first.getByRole('button', { name: 'Settle' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('One entry waits to be settled')
  await expect(page.getByRole('article')).toContainText('25.9')
  expect((await app.look.query('SELECT 1 FROM reading WHERE batch_id = $1', [there.batchId])).rows).toHaveLength(1)
})

test('an odd value says so before it is taken, and what cannot be a reading is refused as a whole', async ({
  as,
  bakery,
  app,
}) => {
  const { there } = await walkEntryAside({ bakery, neighbour: bakery, look: app.look })
  const odd = { ...there, id: uuid(), value: '600' }
  valueOf(await takeEntries.call(asSelf(bakery.early), { entries: [{ ...odd, confirmed: true }] }))
  const corrected = { kind: 'correction', supersedesId: there.id, repeat: 1, unit: '°C', reason: 'typing slip' }
  const entries = [
    { ...corrected, id: uuid(), value: '26.6' },
    { ...corrected, id: uuid(), value: 'warm' },
  ]
  valueOf(await takeEntries.call(asSelf(bakery.owner), { entries }))
  const page = await as(bakery.head)
  await page.goto('/shift/kept-aside')
  await expect(page.getByRole('article').filter({ hasText: '600' })).toContainText('outside what is usual')
  const warm = page.getByRole('article').filter({ hasText: 'warm' })
  await warm.getByLabel('Into the book').check()
  await warm.getByLabel('Why?').fill('He felt it.')
  await warm.getByRole('button', { name: 'Settle' }).click()
  await expect(warm.getByRole('alert')).toContainText('As it was sent, this cannot be a reading of this batch')
  await expect(warm.getByLabel('Why?')).toHaveValue('He felt it.')
  expect((await app.look.query('SELECT 1 FROM settled_entry WHERE bakery_id = $1', [bakery.bakeryId])).rows).toEqual([])
})

test('whoever comes second is told who settled it, how and why, and that the reading there is another by now', async ({
  as,
  bakery,
  app,
}) => {
  const { there, aside } = await walkEntryAside({ bakery, neighbour: bakery, look: app.look })
  const page = await as(bakery.head)
  await page.goto('/shift/kept-aside')
  const entry = page.getByRole('article')
  await entry.getByLabel('Into the book').check()
  await entry.getByLabel('Why?').fill('The probe.')
  const corrected = {
    id: uuid(),
    supersedesId: there.id,
    repeat: 1,
    value: '26.9',
    unit: '°C',
    reason: 'typing slip',
  }
  valueOf(await correctReading.call(asSelf(bakery.owner), corrected))
  await entry.getByRole('button', { name: 'Settle' }).click()
  await expect(entry.getByRole('alert')).toContainText('Olga changed this at')
  await expect(entry.getByRole('row').nth(2)).toContainText(/26\.9.°C/)
  await expect(entry.getByLabel('Why?')).toHaveValue('The probe.')
  await expect(entry.getByLabel('Into the book')).toBeChecked()

  valueOf(
    await settleEntry.call(asSelf(bakery.owner), {
      ...aside,
      take: false,
      seenReadingId: null,
      reason: 'the owner was there',
    }),
  )
  await entry.getByRole('button', { name: 'Settle' }).click()
  await expect(entry.getByRole('alert')).toContainText(
    /Olga settled this at .* and left it aside: the owner was there\. Nothing is left to do here/,
  )
  expect((await app.look.query('SELECT 1 FROM reading WHERE batch_id = $1', [there.batchId])).rows).toHaveLength(2)
  await page.reload()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Nothing is kept aside')
})
