import type { Page } from 'playwright/test'
import { expect } from '../app'
import type { BatchRead } from './invented-readings'

/** Types one reading as a shift baker does, and waits until it is in the book. */
async function read(page: Page, measure: string, place: string, repeat: number, value: number): Promise<void> {
  const field = page.getByRole('textbox', { name: `${measure}, ${place}, reading ${repeat}` })
  await field.fill(String(value))
  await page.getByRole('button', { name: `Keep ${measure}, ${place}` }).click()
  await expect(field).toBeHidden()
}

/** Takes the batch that comes next from the rack to its last reading. */
export async function bakeBatch(page: Page, code: string, readings: BatchRead): Promise<void> {
  await page.goto('/shift')
  await page.getByRole('link', { name: new RegExp(code) }).click()
  await expect(page.getByRole('heading', { level: 1 })).toContainText(code)
  const cleaned = page.getByLabel('Bench, bowl and tools are cleaned down')
  if (await cleaned.isVisible()) await cleaned.check()
  await page.getByRole('button', { name: 'Begin: weigh out' }).click()
  await page.getByRole('button', { name: 'Weighed out: into the mixer' }).click()
  await expect(page.getByRole('button', { name: 'Out of the oven' })).toBeVisible()
  await read(page, 'Water added', 'Batch', 1, readings.waterG)
  await read(page, 'Dough temperature', 'Batch', 1, readings.doughTempC)
  for (const [at, { doughG }] of readings.pieces.entries())
    await read(page, 'Dough weight', `Piece ${at + 1}`, 1, doughG)
  await page.getByLabel('Unit of Proof time, Batch').selectOption('min')
  await read(page, 'Proof time', 'Batch', 1, readings.proofMin)
  await page.getByRole('button', { name: 'Out of the oven' }).click()
  await expect(page.getByRole('button', { name: 'Measured all the same' })).toBeVisible()
  for (const [at, { loafG, volumesMl }] of readings.pieces.entries()) {
    await read(page, 'Loaf weight', `Piece ${at + 1}`, 1, loafG)
    for (const [repeat, volumeMl] of volumesMl.entries())
      await read(page, 'Loaf volume', `Piece ${at + 1}`, repeat + 1, volumeMl)
  }
  await page.getByLabel('Pieces made').fill(String(readings.pieces.length))
  await page.getByLabel('Of them good').fill(String(readings.pieces.length))
  await page.getByRole('button', { name: 'Keep the count' }).click()
  await expect(page.getByText('The count is in the book.')).toBeVisible()
  await page.getByRole('button', { name: 'Everything is measured' }).click()
  await expect(page.getByRole('button', { name: 'Everything is measured' })).toBeHidden()
}
