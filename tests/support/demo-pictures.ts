import fs from 'node:fs'
import path from 'node:path'
import { expect, type Page } from 'playwright/test'

/** Where the README's pictures are. They are made anew with EVENDOUGH_PICTURES=1, and otherwise into the reports' folder. */
const kept = path.join('tests', 'browser', 'pictures')
const folder = process.env.EVENDOUGH_PICTURES === '1' ? kept : path.join('.test', 'pictures')

/** Takes the picture of a screen as it is at the desk, with the sign of the invented bakery on it. */
async function picture(page: Page, name: string): Promise<void> {
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
  await expect(page.getByText(/invented/i).first()).toBeVisible()
  await page.screenshot({ path: path.join(folder, `${name}.png`), animations: 'disabled' })
}

/** Takes a picture of each main screen of the invented bakery, as its owner, and looks whether the README shows them all. */
export async function takeDemoPictures(page: Page, base: string, email: string, password: string): Promise<void> {
  await page.setViewportSize({ width: 1280, height: 860 })
  await page.emulateMedia({ colorScheme: 'light' })
  await page.goto(`${base}/sign-in`)
  await page.getByLabel('E-mail address').fill(email)
  await page.getByLabel('Password', { exact: true }).fill(password)
  await page.getByRole('button', { name: 'Sign in' }).click()
  await expect(page.getByRole('navigation').first()).toBeVisible()

  const main = page.getByRole('main')
  await page.goto(`${base}/shift`)
  await picture(page, 'shift')
  await main
    .getByRole('link', { name: /in work/ })
    .first()
    .click()
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Batch')
  await picture(page, 'batch')
  await page.goto(`${base}/trials`)
  await picture(page, 'trials')
  await main.getByRole('link', { name: /buttermilk or honey/ }).click()
  await expect(page.getByRole('heading', { level: 1 })).toContainText('more specific volume')
  await picture(page, 'result')
  await page.goto(`${base}/decisions`)
  await main
    .getByRole('link', { name: /oat loaf/ })
    .first()
    .click()
  await expect(page.getByRole('heading', { level: 1 })).toContainText('waiting for the owner')
  await picture(page, 'decision')
  await page.goto(`${base}/formulas`)
  await main
    .getByRole('link', { name: /wholemeal/i })
    .first()
    .click()
  await picture(page, 'formula')
  await page.goto(`${base}/stores`)
  await picture(page, 'stores')
  await page.goto(`${base}/calculators/arms/balance-arm`)
  await picture(page, 'calculator')

  const readme = fs.readFileSync('README.md', 'utf8')
  for (const file of fs.readdirSync(folder)) expect(readme, 'README.md').toContain(`tests/browser/pictures/${file}`)
  for (const [, file] of readme.matchAll(/\((tests\/browser\/pictures\/[\w-]+\.png)\)/g))
    expect(fs.existsSync(file ?? ''), file).toBe(true)
}
