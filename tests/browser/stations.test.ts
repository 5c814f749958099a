import { expect, test } from '../support/app'
import { testPin } from '../support/stations'

type Answer = { status: number; body: Record<string, unknown>; cookie: string | null }

async function post(url: string, path: string, body: object, headers: Record<string, string> = {}): Promise<Answer> {
  const response = await fetch(`${url}/api/v1/station/${path}`, {
    method: 'POST',
    body: JSON.stringify(body),
    headers: { 'Content-Type': 'application/json', Origin: url, ...headers },
  })
  expect(response.headers.get('cache-control')).toContain('no-store')
  return {
    status: response.status,
    body: (await response.json()) as Record<string, unknown>,
    cookie: response.headers.get('set-cookie'),
  }
}

test('a tablet comes in by a code from the desk, a baker logs on to it, and the desk withdraws it', async ({
  as,
  bakery,
  app,
}) => {
  const head = await as(bakery.head)
  await head.goto('/account')
  const pin = head.getByRole('region', { name: 'PIN for tablets' })
  await pin.getByLabel('Six digits').fill('123456')
  await pin.getByLabel('Your password now').fill(bakery.head.password)
  await pin.getByRole('button', { name: 'Keep the PIN' }).click()
  await expect(pin.getByRole('alert')).toContainText('Somebody would try this PIN first.')
  await pin.getByLabel('Six digits').fill(testPin)
  await pin.getByLabel('Your password now').fill(bakery.head.password)
  await pin.getByRole('button', { name: 'Keep the PIN' }).click()
  await expect(pin.getByText('Your PIN is kept.')).toBeVisible()

  await head.goto('/stations')
  await expect(head.getByText('With a PIN: Henk.')).toBeVisible()
  const enrol = head.getByRole('region', { name: 'Enrol a tablet' })
  await enrol.getByRole('button', { name: 'Make its code' }).click()
  await expect(enrol.getByRole('alert')).toContainText('Put right what is marked below.')
  await enrol.getByLabel('Name').fill('Bench')
  await enrol.getByRole('button', { name: 'Make its code' }).click()
  const shown = enrol.getByText(/^[2-9A-Z]{4}-[2-9A-Z]{4}$/)
  await expect(shown).toBeVisible()
  const row = head.getByRole('region', { name: 'Tablets' }).getByRole('row').nth(1)
  await expect(row).toContainText(/Bench.*waits for its code.*Henk/)
  const code = (await shown.textContent()) ?? ''

  // What is typed wrong, from elsewhere, or as no JSON enrols nobody.
  expect((await post(app.url, 'enrol', { code: 'AAAA-AAAA' })).status).toBe(422)
  expect((await post(app.url, 'enrol', { code }, { Origin: 'https://elsewhere.example' })).status).toBe(403)
  expect((await post(app.url, 'enrol', { code }, { 'Content-Type': 'text/plain' })).status).toBe(415)
  const enrolled = await post(app.url, 'enrol', { code })
  expect(enrolled.status).toBe(200)
  expect(enrolled.body).toEqual({ name: 'Bench', bakery: bakery.name })
  expect(enrolled.cookie).toMatch(
    /^__Host-evendough\.station=[\w-]{22}; Max-Age=\d+; Path=\/; Secure; HttpOnly; SameSite=Strict$/,
  )
  expect((await post(app.url, 'enrol', { code })).status).toBe(422)

  const Cookie = enrolled.cookie?.split(';')[0] ?? ''
  const asked = { personId: bakery.head.personId, pin: testPin }
  expect((await post(app.url, 'log-on', asked)).status).toBe(401)
  expect((await post(app.url, 'log-on', { ...asked, pin: '111111' }, { Cookie })).status).toBe(422)
  const on = await post(app.url, 'log-on', asked, { Cookie })
  expect(on.status).toBe(200)
  const held = { Cookie, 'Evendough-Shift': String(on.body.shiftToken) }
  const look = async (headers: Record<string, string>) => {
    const response = await fetch(`${app.url}/api/v1/station`, { headers })
    return { status: response.status, body: (await response.json()) as { onShift?: { name: string } | null } }
  }
  expect((await look(held)).body.onShift?.name).toBe('Henk')
  expect((await look({ Cookie })).body.onShift).toBeNull()
  expect((await post(app.url, 'go-on', { shiftToken: on.body.shiftToken }, { Cookie })).status).toBe(200)
  expect((await post(app.url, 'log-off', {}, held)).status).toBe(200)
  expect((await post(app.url, 'go-on', { shiftToken: on.body.shiftToken }, { Cookie })).status).toBe(422)
  for (let tries = 0; tries < 6; tries++) await post(app.url, 'log-on', { ...asked, pin: '111111' }, { Cookie })
  expect((await post(app.url, 'log-on', asked, { Cookie })).status).toBe(429)

  // The owner is told of what the head baker did, once.
  const owner = await as(bakery.owner)
  await owner.goto('/')
  const waits = owner.getByRole('region', { name: 'Waits for you' })
  await expect(waits.getByText('Somebody else saw to a tablet')).toBeVisible()
  await waits.getByRole('link', { name: 'Bench' }).click()
  await owner.getByRole('button', { name: 'I know about Bench' }).click()
  await expect(owner.getByRole('button', { name: 'I know about Bench' })).toHaveCount(0)
  await owner.getByRole('button', { name: 'Withdraw Bench' }).click()
  await expect(owner.getByRole('region', { name: 'Tablets' }).getByRole('row').nth(1)).toContainText(
    /Bench.*withdrawn.*Olga/,
  )
  expect((await look({ Cookie })).status).toBe(401)
})
