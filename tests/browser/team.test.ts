import { expect, test } from '../support/app'
import { makeBakery } from '../support/bakery'

const goodPassword = 'rye sours slowly in june'

test('signing in by hand: a wrong password stays outside, the right one comes in, signing out leaves nothing', async ({
  page,
  bakery,
  app,
  expectNoise,
}) => {
  expectNoise(/401 \(Unauthorized\)/)
  await page.goto('/team')
  await expect(page).toHaveURL(`${app.url}/sign-in`)
  await page.getByLabel('E-mail address').fill(bakery.owner.email)
  await page.getByLabel('Password').fill('not the password')
  await page.getByRole('button', { name: 'Sign in' }).click()
  await expect(page.getByRole('main').getByRole('alert')).toContainText('E-mail or password is wrong')
  await expect(page.getByLabel('E-mail address')).toHaveValue(bakery.owner.email)
  await page.getByLabel('Password').fill(bakery.owner.password)
  await page.getByRole('button', { name: 'Sign in' }).click()
  await expect(page).toHaveURL(`${app.url}/trials`)
  await page.getByRole('link', { name: 'Team' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toContainText('4 people work here')
  const cookies = await page.context().cookies()
  expect(cookies.find((cookie) => cookie.name === '__Host-evendough.session')).toMatchObject({
    httpOnly: true,
    secure: true,
    sameSite: 'Lax',
    path: '/',
  })
  const told: unknown = await (await page.request.get('/api/auth/session')).json()
  expect(Object.keys(told as object)).toEqual(['expires'])

  await page.getByRole('button', { name: 'Sign out' }).click()
  await expect(page).toHaveURL(`${app.url}/sign-in`)
  await page.goBack()
  await expect(page).toHaveURL(`${app.url}/sign-in`)
  const replayed = await fetch(`${app.url}/team`, {
    redirect: 'manual',
    headers: { Cookie: cookies.map(({ name, value }) => `${name}=${value}`).join('; ') },
  })
  expect(replayed.status).toBe(307)
})

test('somebody joins by a link, is made head baker, and is switched off in the middle of their work', async ({
  as,
  bakery,
  browser,
  app,
}) => {
  const owner = await as(bakery.owner)
  await owner.goto('/team')
  await owner.getByRole('button', { name: 'Make the invitation' }).click()
  await expect(owner.getByRole('main').getByRole('alert')).toContainText('Not kept yet')
  await expect(owner.getByLabel('Name', { exact: true })).toHaveAccessibleDescription(/This is needed/)
  await owner.getByLabel('Name', { exact: true }).fill('Nia Ferro')
  await owner.getByLabel('Signs in with').fill('nia@')
  await owner.getByRole('button', { name: 'Make the invitation' }).click()
  await expect(owner.getByLabel('Signs in with')).toHaveAccessibleDescription(/Write an e-mail address/)
  await expect(owner.getByLabel('Name', { exact: true })).toHaveValue('Nia Ferro')
  const email = `nia-${bakery.bakeryId}@mill-row.example`
  await owner.getByLabel('Signs in with').fill(email)
  await owner.getByRole('button', { name: 'Make the invitation' }).click()
  const link = await owner.getByLabel('Link for Nia Ferro').inputValue()
  expect(link).toMatch(new RegExp(`^${app.url}/join/[\\w-]{22}$`))
  await expect(owner.getByRole('row', { name: /Nia Ferro shift baker to join/ })).toBeVisible()

  const niaContext = await browser.newContext({ baseURL: app.url })
  const nia = await niaContext.newPage()
  await nia.goto(link)
  await expect(nia.getByRole('heading', { level: 1 })).toHaveText('Join Mill Row')
  await nia.getByLabel('Choose a password').fill('mill row mill row')
  await nia.getByRole('button', { name: 'Keep the password and go in' }).click()
  await expect(nia.getByRole('main').getByRole('alert')).toContainText('holds a name that anybody would try')
  await nia.getByLabel('Choose a password').fill(goodPassword)
  await nia.getByRole('button', { name: 'Keep the password and go in' }).click()
  await expect(nia).toHaveURL(`${app.url}/trials`)
  await nia.getByRole('link', { name: 'Team' }).click()
  await expect(nia.getByRole('heading', { level: 1 })).toContainText('5 people work here')
  await expect(nia.getByRole('heading', { name: 'Invite somebody' })).toBeHidden()

  await owner.goto('/team')
  await owner.getByRole('link', { name: 'Change Nia Ferro' }).click()
  await expect(owner.getByRole('heading', { level: 1 })).toContainText('Nia Ferro')
  await owner.getByLabel('head baker').check()
  await owner.getByRole('button', { name: 'Keep the change' }).click()
  await expect(owner.getByRole('status')).toContainText('The change is kept')
  await nia.goto('/team')
  await expect(nia).toHaveURL(`${app.url}/sign-in`)
  await nia.getByLabel('E-mail address').fill(email)
  await nia.getByLabel('Password').fill(goodPassword)
  await nia.getByRole('button', { name: 'Sign in' }).click()
  await expect(nia).toHaveURL(`${app.url}/trials`)
  await nia.getByRole('link', { name: 'Team' }).click()
  await expect(nia.getByRole('heading', { name: 'Invite somebody' })).toBeVisible()

  await owner.getByLabel('Works here').uncheck()
  await owner.getByRole('button', { name: 'Keep the change' }).click()
  await expect(owner.getByText('switched off').first()).toBeVisible()
  await nia.getByRole('link', { name: 'Your account' }).click()
  await expect(nia).toHaveURL(`${app.url}/sign-in`)
  await niaContext.close()
})

test('two people change one record: the second is told who was first, and nothing typed is lost', async ({
  as,
  bakery,
}) => {
  const [first, second] = [await as(bakery.owner), await as(bakery.owner)]
  for (const page of [first, second]) await page.goto(`/team/people/${bakery.late.personId}`)
  await first.getByLabel('Name', { exact: true }).fill('Lars Holm')
  await first.getByRole('button', { name: 'Keep the change' }).click()
  await expect(first.getByRole('heading', { level: 1 })).toContainText('Lars Holm')
  await second.getByLabel('Name', { exact: true }).fill('Lars H.')
  await second.getByLabel('Works here').uncheck()
  await second.getByRole('button', { name: 'Keep the change' }).click()
  await expect(second.getByRole('main').getByRole('alert')).toContainText('Olga changed this at')
  await expect(second.getByLabel('Name', { exact: true })).toHaveValue('Lars H.')
  await expect(second.getByLabel('Works here')).not.toBeChecked()
})

test('a new password by link shows the link once, and asks the owner’s own password for it', async ({ as, bakery }) => {
  const owner = await as(bakery.owner)
  await owner.goto(`/team/people/${bakery.early.personId}`)
  await owner.getByLabel('Your own password').fill('wrong')
  await owner.getByRole('button', { name: 'Make the link' }).click()
  await expect(owner.getByRole('main').getByRole('alert')).toContainText('That is not your password')
  await owner.getByLabel('Your own password').fill(bakery.owner.password)
  await owner.getByRole('button', { name: 'Make the link' }).click()
  await expect(owner.getByLabel('Link for Esi')).toHaveValue(/\/join\//)
  await owner.reload()
  await expect(owner.getByLabel('Link for Esi')).toBeHidden()
  await owner.goto('/team/record')
  await expect(owner.getByText('made a link for a new password')).toBeVisible()
  await expect(owner.getByText('gave a wrong password')).toBeVisible()
  await expect(owner.getByRole('status')).toContainText('Each entry on this page follows from the one before it')
  await owner.getByRole('link', { name: 'Check the whole record' }).click()
  await expect(owner.getByRole('status')).toContainText(
    'Every entry, from the first to the last, follows from the one before it',
  )
})

test('the owner changes the settings, and a shift baker is told no in words', async ({ as, bakery, expectNoise }) => {
  const owner = await as(bakery.owner)
  await owner.goto('/team/settings')
  await owner.getByLabel('Name of the bakery').fill('Mill Row and Sons')
  await owner.getByLabel('Time zone').selectOption('Pacific/Auckland')
  await owner.getByRole('button', { name: 'Keep the settings' }).click()
  await expect(owner.getByRole('status')).toContainText('The settings are kept')
  await expect(owner.getByText('Mill Row and Sons').first()).toBeVisible()
  expectNoise(/403 \(Forbidden\)/)
  const early = await as(bakery.early)
  await early.goto('/team/settings')
  await expect(early.getByRole('heading', { level: 1 })).toHaveText('This is not for your role')
})

test('text that looks like code is shown as text', async ({ as, bakery }) => {
  const owner = await as(bakery.owner)
  let dialogs = 0
  owner.on('dialog', (dialog) => {
    dialogs++
    void dialog.dismiss()
  })
  await owner.goto(`/team/people/${bakery.late.personId}`)
  const name = '<img src=x onerror=alert(1)> {count} =1+1'
  await owner.getByLabel('Name', { exact: true }).fill(name)
  await owner.getByRole('button', { name: 'Keep the change' }).click()
  await expect(owner.getByRole('heading', { level: 1 })).toContainText(name)
  await owner.goto('/team/record')
  await expect(owner.getByText(name).first()).toBeVisible()
  expect(dialogs).toBe(0)
})

test('a request from another site writes nothing and is refused', async ({ app, bakery }) => {
  const other = await makeBakery('Next Door', new Date())
  expect(other.bakeryId).not.toBe(bakery.bakeryId)
  const sent: Record<string, string>[] = [
    { 'Sec-Fetch-Site': 'cross-site' },
    { 'Sec-Fetch-Site': 'same-site' },
    { Origin: 'null' },
    { Origin: 'https://elsewhere.example' },
    {},
  ]
  for (const headers of sent) {
    const answer = await fetch(`${app.url}/sign-out`, { method: 'POST', redirect: 'manual', headers })
    expect(answer.status, JSON.stringify(headers)).toBe(403)
  }
})
