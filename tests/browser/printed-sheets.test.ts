import type { Page } from 'playwright/test'
import { decidePlan } from '../../lib/kitchen/trials/decide-plan'
import { draftTrial } from '../../lib/kitchen/trials/draft-trial'
import { proposePlan } from '../../lib/kitchen/trials/propose-plan'
import { expect, test } from '../support/app'
import { callerOf, valueOf, type TestBakery } from '../support/bakery'
import { openTheKey } from '../support/open-the-key'
import { makeTrialStores, trialContentOf } from '../support/trials'

async function approvedTrial(bakery: TestBakery): Promise<string> {
  const now = new Date()
  const stores = await makeTrialStores(bakery, now)
  const early = callerOf(bakery.early.sessionSecret, now, bakery.early.password)
  const { trialId } = valueOf(await draftTrial.call(early, { content: trialContentOf(stores) }))
  const { planHash, revision } = valueOf(await proposePlan.call(early, { trialId, seenRevision: 1 }))
  const head = callerOf(bakery.head.sessionSecret, now, bakery.head.password)
  valueOf(await decidePlan.call(head, { trialId, seenRevision: revision, planHash, verdict: 'approved', note: '' }))
  return trialId
}

/** Pages of a PDF, by its page objects (ISO 32000-1, 7.7.3.3). */
async function pagesOf(page: Page, format: 'A4' | 'Letter'): Promise<number> {
  const pdf = await page.pdf({ format })
  return pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0
}

test('weigh-out sheets print a page a dough, on A4 and on Letter', async ({ bakery, as }) => {
  const trialId = await approvedTrial(bakery)
  const page = await as(bakery.early)
  await page.goto(`/trials/${trialId}/weigh-out`)
  await page.getByRole('button', { name: 'Open the key' }).click()
  await expect(page.getByRole('heading', { name: 'Control' })).toBeVisible()
  expect(await pagesOf(page, 'A4')).toBe(3)
  expect(await pagesOf(page, 'Letter')).toBe(3)
})

test('nothing is cut at the edge of a printed plan, sheet, batch or result', async ({ bakery, as }) => {
  const trialId = await approvedTrial(bakery)
  await openTheKey(callerOf(bakery.head.sessionSecret, new Date()), trialId)
  const page = await as(bakery.head)
  await page.goto('/shift')
  const batch = await page.locator('main a[href^="/shift/"]').first().getAttribute('href')
  await page.emulateMedia({ media: 'print' })
  // What A4 leaves between its margins, the narrower of the two: 182 mm at 96 dots an inch.
  await page.setViewportSize({ width: Math.floor((182 / 25.4) * 96), height: 1000 })
  for (const address of [
    `/trials/${trialId}`,
    `/trials/${trialId}/weigh-out`,
    batch ?? '',
    `/trials/${trialId}/result`,
  ]) {
    await page.goto(address)
    const beyond = await page.evaluate(() =>
      [...document.querySelectorAll('main *')]
        .filter(
          (each) =>
            each.getClientRects().length > 0 &&
            getComputedStyle(each).clipPath === 'none' &&
            each.getBoundingClientRect().right > document.documentElement.clientWidth + 1,
        )
        .map((each) => each.outerHTML.slice(0, 120)),
    )
    expect(beyond, address).toEqual([])
  }
})

test('a printed plan says where the record stands, and what is typed from it is compared', async ({ bakery, as }) => {
  const trialId = await approvedTrial(bakery)
  const page = await as(bakery.owner)
  await page.goto(`/trials/${trialId}`)
  const foot = page.getByText(/^Record at entry/)
  await expect(foot).toBeHidden()
  await page.emulateMedia({ media: 'print' })
  await expect(foot).toBeVisible()
  const [, number = '', hash = ''] = /entry ([\d,]+): ((?:[0-9a-f]{4} ?){4})/.exec(await foot.innerText()) ?? []
  await page.emulateMedia({ media: 'screen' })
  await page.goto('/team/record')
  const compare = async (typed: string) => {
    await page.getByLabel('Entry', { exact: true }).fill(number.replace(',', ''))
    await page.getByLabel('Its hash, as printed').fill(typed)
    await page.getByRole('button', { name: 'Compare' }).click()
  }
  await compare(hash)
  await expect(page.getByText('everything up to it is what it was then')).toBeVisible()
  await compare(hash.replace(/[0-9a-f]$/, (last) => (last === '0' ? '1' : '0')))
  await expect(page.getByText('The record was written anew')).toBeVisible()
  await compare('not a hash')
  await expect(page.getByText('That is no foot of a print')).toBeVisible()
  await expect(page.getByLabel('Its hash, as printed')).toHaveValue('not a hash')
})
