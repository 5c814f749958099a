import { findFreePort } from '../../lib/ops/find-free-port'
import { serveApp } from '../../lib/ops/serve'
import { draftTrial } from '../../lib/kitchen/trials/draft-trial'
import { cookieOf, expect, test } from '../support/app'
import { callerOf, valueOf } from '../support/bakery'
import { makeEndedTrial } from '../support/ended-trial'
import { trialContentOf } from '../support/trials'

test('where nothing can be worked out, a page says so in words, and everything else goes on', async ({
  app,
  bakery,
  browser,
}) => {
  const now = new Date()
  const ended = await makeEndedTrial(bakery, { now })
  const draft = valueOf(
    await draftTrial.call(callerOf(bakery.early.sessionSecret, now), { content: trialContentOf(ended.stores) }),
  )
  // The same database, and workers without the file that they run.
  const port = await findFreePort()
  const url = `http://localhost:${port}`
  const served = await serveApp(port, {
    DATABASE_URL: process.env.DATABASE_URL ?? '',
    NEXTAUTH_URL: url,
    EVENDOUGH_WORKER: '/nowhere/worker.mjs',
    EVENDOUGH_LOG_LEVEL: 'silent',
  })
  try {
    const context = await browser.newContext({ baseURL: url })
    await context.addCookies([await cookieOf(bakery.head.sessionSecret, url)])
    const page = await context.newPage()
    const sentence = page.getByText(/^Mind this\..*could not be worked out just now/)
    for (const address of [
      `/trials/${ended.trialId}/result`,
      `/trials/${ended.trialId}/decide`,
      `/trials/${draft.trialId}`,
      '/calculators/reference/weighing',
    ]) {
      const answer = await page.goto(address)
      expect(answer?.status(), address).toBe(200)
      await expect(page.getByRole('heading', { level: 1, name: 'Not worked out yet' }), address).toBeVisible()
      await expect(sentence, address).toBeVisible()
      await expect(page.getByRole('button', { name: 'Try again' }), address).toBeVisible()
    }
    await page.goto('/calculators/weighing/least-net-mass')
    await expect(page.getByText('This could not be worked out just now').first()).toBeVisible()
    for (const address of ['/trials', '/stores', `/trials/${ended.trialId}`])
      expect((await page.goto(address))?.status(), address).toBe(200)
    await context.close()
  } finally {
    await served.stop()
  }
  expect(app.url).not.toBe(url)
})
