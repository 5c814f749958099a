import { createHash } from 'node:crypto'
import { db } from '../../lib/db/client'
import { expect, test } from '../support/app'
import { makeApprovedTrial } from '../support/approved-trial'

const tooOld = 'this Evendough is too old to know that'
const hashOf = (text: string) => createHash('sha256').update(text, 'utf8').digest('hex')

/** A text as a later Evendough writes it. */
const later = (text: string) => {
  const other = text.replace(/"format":\d+/, '"format":1000')
  return { text: other, hash: hashOf(other) }
}

test('what a later Evendough has frozen is said to be that on every page of it, and the rest of the page works', async ({
  as,
  bakery,
}) => {
  const { bakeryId } = bakery
  const { trialId, formulaId, versionId, batches } = await makeApprovedTrial(bakery, {
    isUndecided: true,
    now: new Date(),
  })
  const trial = { bakeryId_id: { bakeryId, id: trialId } }
  const { planText } = await db().trial.findUniqueOrThrow({ where: trial, select: { planText: true } })
  const plan = later(planText ?? '')
  await db().trial.update({ where: trial, data: { planText: plan.text, planHash: plan.hash } })
  await db().trial.update({ where: trial, data: { state: 'approved' } })
  const last = { number: 1n, previous: '0'.repeat(64) }
  const entry = { text: '{"format":1000}', hash: hashOf('{"format":1000}') }
  await db().auditEntry.create({
    data: {
      bakeryId,
      number: last.number,
      at: new Date(),
      personId: null,
      action: 'later',
      targetId: null,
      entryText: entry.text,
      previousHash: last.previous,
      hash: entry.hash,
    },
  })
  await db().auditHead.update({ where: { bakeryId }, data: { number: last.number, hash: entry.hash } })

  const page = await as(bakery.owner)
  await page.goto(`/trials/${trialId}`)
  await expect(page.getByRole('heading', { level: 1 })).toContainText('This cannot be shown')
  await expect(page.getByText(tooOld)).toBeVisible()
  await page.getByRole('link', { name: 'What it showed' }).click()
  await expect(page).toHaveURL(/\/result$/)
  await page.goto(`/trials/${trialId}/weigh-out`)
  await expect(page.getByText(tooOld)).toBeVisible()
  await page.goto(`/shift/${batches[0]?.batchId ?? ''}`)
  await page.getByRole('button', { name: 'Open this dough’s key' }).click()
  await expect(page.getByText('Do not mix from memory')).toBeVisible()
  await expect(page.getByRole('button', { name: /Begin/ })).toBeVisible()
  await page.goto('/team/record')
  await expect(page.getByText(/^written in form 1000/)).toBeVisible()
  await expect(page.getByText('Nothing shows that anything is wrong.')).toBeVisible()

  // The version of this trial's control holds no content at all: kept, signed, and not what a version is.
  await page.goto(`/formulas/${formulaId}/versions/${versionId}`)
  await expect(page.getByText('it does not fit its seal')).toBeVisible()
  await page.getByRole('link', { name: 'All versions' }).click()
  await expect(page).toHaveURL(new RegExp(`/formulas/${formulaId}$`))
})
