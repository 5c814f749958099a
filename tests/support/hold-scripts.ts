import type { Page } from 'playwright/test'

/** From now on a page's scripts wait, as on a slow tablet. @returns lets them through, those of later pages as well */
export async function holdScripts(page: Page): Promise<() => void> {
  let release = () => {}
  const released = new Promise<void>((resolve) => (release = resolve))
  await page.route('**/_next/static/**/*.js', async (route) => {
    await released
    await route.continue()
  })
  return release
}
