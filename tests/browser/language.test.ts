import { expect, test, cookieOf } from '../support/app'
import { callAction } from '../support/call-action'
import { everyAction } from '../support/walks/all'

const signing = everyAction.filter(
  ({ command }) => command === 'trials.decide-plan' || command === 'formulas.sign-off-version',
)
/** Brackets that the pseudo-language puts around each of its texts. */
const marked = /⟦/

for (const walk of signing) {
  test(`${walk.command} keeps words of a language that exists, whatever header, cookie and field ask for`, async ({
    app,
    bakery,
  }) => {
    const { page, bound, fields, happened } = await walk.aim({ bakery, neighbour: bakery, look: app.look })
    const { name, value } = await cookieOf(bakery.owner.sessionSecret, app.url)
    const own = Object.fromEntries(
      Object.entries(fields).map(([field, typed]) => [field, typed === '{own}' ? bakery.owner.password : typed]),
    )
    const response = await callAction({
      url: app.url,
      page,
      action: walk.action,
      bound,
      fields: { ...own, language: 'en-XA', lang: 'en-XA', locale: 'en-XA' },
      cookie: `${name}=${value}; language=en-XA; NEXT_LOCALE=en-XA; lang=en-XA`,
      headers: { 'Accept-Language': 'en-XA' },
    })
    // The page that comes back is in what the browser asked for; what was signed is not.
    expect(await response.text()).toMatch(marked)
    expect(await happened()).toBe(true)
    const { rows } = await app.look.query<{ meaning: string }>(
      'SELECT meaning FROM plan_decision WHERE bakery_id = $1 UNION ALL SELECT meaning FROM signature WHERE bakery_id = $1 UNION ALL SELECT entry_text FROM audit_entry WHERE bakery_id = $1',
      [bakery.bakeryId],
    )
    expect(rows.length).toBeGreaterThan(1)
    expect(rows.filter(({ meaning }) => marked.test(meaning))).toEqual([])
  })
}

test('a language is chosen on the account page, and comes before the bakery’s and the browser’s', async ({
  as,
  bakery,
}) => {
  const page = await as(bakery.early, { locale: 'en-XA' })
  await page.goto('/account')
  await expect(page.locator('html')).toHaveAttribute('lang', 'en-XA')
  await page.locator('select[name=language]').selectOption('en')
  await page.locator('form:has(select[name=language]) button[type=submit]').click()
  await expect(page.getByText('The language is kept.')).toBeVisible()
  await page.reload()
  await expect(page.locator('html')).toHaveAttribute('lang', 'en')
  await expect(page.locator('select[name=language]')).toHaveValue('en')
  // Somebody else’s screen stays as their browser asks, until the bakery has one.
  const owner = await as(bakery.owner, { locale: 'en-XA' })
  await owner.goto('/team/settings')
  await expect(owner.locator('html')).toHaveAttribute('lang', 'en-XA')
  await owner.locator('select[name=language]').selectOption('en')
  await owner.locator('form:has(select[name=language]) button[type=submit]').click()
  await expect(owner.getByText('The settings are kept.')).toBeVisible()
  await owner.goto('/trials')
  await expect(owner.locator('html')).toHaveAttribute('lang', 'en')
})
