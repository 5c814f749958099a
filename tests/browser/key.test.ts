import { db } from '../../lib/db/client'
import { cookieOf, expect, test } from '../support/app'
import { makeApprovedTrial } from '../support/approved-trial'
import type { TestBakery, TestPerson } from '../support/bakery'

const entries = (bakery: TestBakery, action: string) =>
  db().auditEntry.count({ where: { bakeryId: bakery.bakeryId, action } })

test('the sheets are shown to who opens the key, and stay shut for who measures', async ({ bakery, as }) => {
  const { trialId, batches } = await makeApprovedTrial(bakery, { now: new Date() })
  const page = await as(bakery.early)
  await page.goto(`/trials/${trialId}/weigh-out`)
  await expect(page.getByText('it stands in the record that you know it')).toBeVisible()
  await expect(page.getByText(batches[0]!.code, { exact: true })).toHaveCount(0)
  await page.getByRole('button', { name: 'Open the key' }).click()
  await expect(page.getByRole('heading', { name: 'Control' })).toBeVisible()
  await page.goto(`/shift/${batches[0]!.batchId}`)
  await expect(page.getByText('This is the control.')).toBeVisible()

  const other = await as(bakery.late)
  await other.goto(`/trials/${trialId}/weigh-out`)
  await expect(other.getByRole('heading', { name: 'Control' })).toHaveCount(0)
  await other.goto(`/shift/${batches[0]!.batchId}`)
  await expect(other.getByText('Allergens in this batch')).toBeVisible()
  await expect(other.getByRole('main')).not.toContainText(/control|milk powder/i)

  const head = await as(bakery.head)
  await head.goto(`/trials/${trialId}`)
  await expect(head.getByText(`${bakery.early.name} opened the key of the trial`)).toBeVisible()
})

test('in an emergency one tap says what a dough is, and the record says who tapped', async ({ bakery, as }) => {
  const { batches } = await makeApprovedTrial(bakery, { now: new Date() })
  const page = await as(bakery.late)
  await page.goto(`/shift/${batches[1]!.batchId}`)
  await expect(page.getByText(/^Allergens in this batch: .*milk/i)).toBeVisible()
  await page.getByRole('button', { name: 'Open this dough’s key' }).click()
  await expect(page.getByText(/This is dough A: With 1 % milk powder\./)).toBeVisible()
  await expect(page.getByText(/^In it: .*Milk powder/)).toBeVisible()
  expect(await entries(bakery, 'shifts.open-dough-key')).toBe(1)
})

test('a page that is opened is a look, once; one that is fetched beforehand is none', async ({ bakery, baseURL }) => {
  const { trialId } = await makeApprovedTrial(bakery, { now: new Date() })
  const address = `${baseURL ?? ''}/trials/${trialId}/result`
  const fetchAs = async (who: TestPerson, headers: Record<string, string> = {}) => {
    const { name, value } = await cookieOf(who.sessionSecret, address)
    const response = await fetch(address, { headers: { cookie: `${name}=${value}`, ...headers } })
    await response.text()
    expect(response.status).toBe(200)
  }
  // What Next's own links and browsers send when they fetch ahead.
  await fetchAs(bakery.early, { rsc: '1', 'next-router-prefetch': '1' })
  await fetchAs(bakery.early, { rsc: '1', 'next-router-prefetch': '1', 'next-router-segment-prefetch': '/_tree' })
  await fetchAs(bakery.early, { 'sec-purpose': 'prefetch;prerender' })
  await fetchAs(bakery.early, { purpose: 'prefetch' })
  await fetchAs(bakery.late)
  await expect.poll(() => entries(bakery, 'key.note-look')).toBe(1)
  await fetchAs(bakery.late)
  await fetchAs(bakery.late, { rsc: '1' })
  await fetchAs(bakery.head)
  await expect.poll(() => entries(bakery, 'key.note-look')).toBe(2)
  const looks = await db().look.findMany({ where: { bakeryId: bakery.bakeryId }, select: { personId: true } })
  expect(looks.map(({ personId }) => personId).sort()).toEqual([bakery.late.personId, bakery.head.personId].sort())
})
