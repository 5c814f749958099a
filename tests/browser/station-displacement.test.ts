import { addEquipment } from '../../lib/kitchen/stores/add-equipment'
import { expect, test } from '../support/app'
import { callerOf, valueOf, type TestBakery } from '../support/bakery'
import { enrolAndLogOn, logOn, openPlace, openTablet, readyToRead, typeNumber, untilDraft } from '../support/tablet'

const owned = async (bakery: TestBakery, facts: object) =>
  valueOf(await addEquipment.call(callerOf(bakery.head.sessionSecret, new Date()), { note: '', ...facts }))

test('a volume is read step by step without a network, and kept like one that was typed', async ({
  app,
  bakery,
  browser,
}) => {
  test.setTimeout(120_000)
  await owned(bakery, { kind: 'volume_gauge', name: 'Seed gauge', volumeMl: 3000, blockMl: 1000 })
  const { code, dough } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, tap, context, faults } = tablet
  const button = (name: string | RegExp) => page.getByRole('button', { name })
  await enrolAndLogOn(tablet, code)
  await context.setOffline(true)
  await openPlace(tablet, dough.code, 'Loaf volume', 'Piece 1 not read yet')
  await tap(button('Step by step, with seed'))
  // A loaf that touched the seed is not sold, and the gauge is asked to be checked; neither holds anybody up.
  await expect(page.getByText(/has touched the seed is not for sale/)).toBeVisible()
  await expect(page.getByText('Seed gauge is not checked today.')).toBeVisible()
  await typeNumber(tablet, '15')
  await untilDraft(page, '15')

  // It is checked from here, and what was typed is still there.
  await tap(button('Check it with its block'))
  await typeNumber(tablet, '1012')
  await tap(button(/^Keep 1012/))
  await expect(page.getByText('Seed gauge is not checked today.')).toHaveCount(0)
  await expect(page.getByText(/Seed gauge showed 12\smL too much\. Nothing is taken off for it here\./)).toBeVisible()
  await expect(page.getByText('15mL')).toBeVisible()

  // More than any gauge holds is said at once, and stays to be put right.
  await typeNumber(tablet, '000')
  await tap(button('Go on with 15000 mL'))
  await expect(page.getByText(/No gauge here holds as much as 15000\smL: 3,000\smL at most/)).toBeVisible()
  for (const _ of '00') await tap(button('Delete the last digit'))
  await tap(button('Go on with 150 mL'))

  await typeNumber(tablet, '150')
  await tap(button('Put it on the pad'))
  await expect(page.getByText(/150\smL is not more than the 150\smL without the loaf/)).toBeVisible()
  await typeNumber(tablet, '00')
  await expect(page.getByText(/is not more than/)).toHaveCount(0)
  await tap(button('Put it on the pad'))
  await expect(page.getByText(/a loaf larger than any gauge here, 3,000\smL/)).toBeVisible()
  await tap(button('Delete the last digit'))
  await tap(button('Delete the last digit'))
  await typeNumber(tablet, '2.5')
  await untilDraft(page, '1502.5')
  await page.reload()
  await expect(page.getByRole('status').filter({ hasText: '1352.5' })).toBeVisible()
  await tap(button('Put 1352.5 mL on the pad'))
  await tap(button('Keep 1352.5 mL'))

  // The next one goes on step by step, by the same reading without the loaf.
  await expect(page.getByText(/Piece 1, reading 2/)).toBeVisible()
  await expect(page.getByText(/150\smL taken off that it showed without one \(Esi, \d\d:\d\d\)/)).toBeVisible()
  await tap(button('Read it again without a loaf'))
  await tap(button('Back to the pad'))
  await tap(button('Step by step, with seed'))
  // Nobody has typed another one, so it is the one that there was.
  await expect(page.getByText(/150\smL taken off/)).toBeVisible()
  await tap(button('Read it again without a loaf'))
  await typeNumber(tablet, '0')
  await tap(button('Go on with 0 mL'))
  await typeNumber(tablet, '1360')
  await tap(button('Put 1360 mL on the pad'))
  await tap(button('Keep 1360 mL'))

  await context.setOffline(false)
  await page.clock.fastForward(60_000)
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  const { rows } = await app.look.query(
    'SELECT value, value_entered, unit_entered, piece, repeat FROM reading WHERE bakery_id = $1 ORDER BY repeat',
    [bakery.bakeryId],
  )
  expect(rows).toEqual([
    { value: 1352.5, value_entered: '1352.5', unit_entered: 'mL', piece: 1, repeat: 1 },
    { value: 1360, value_entered: '1360', unit_entered: 'mL', piece: 1, repeat: 2 },
  ])

  // On the next day it is read without a loaf anew.
  await page.clock.fastForward(24 * 60 * 60_000)
  await page.goto('/station')
  await logOn(tablet)
  await expect(page.getByText(/Piece 2/)).toBeVisible()
  await expect(page.getByText(/What does it show without the loaf/)).toBeVisible()
  expect(faults).toEqual([])
  await context.close()
})

test('no gauge is asked for where none is written down, and no other number is read so', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, dough } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, tap, context, faults } = tablet
  const go = page.getByRole('button', { name: 'Step by step, with seed' })
  await enrolAndLogOn(tablet, code)
  await openPlace(tablet, dough.code, 'Loaf weight', 'Piece 1')
  await expect(page.getByText('Loaf weight, Piece 1')).toBeVisible()
  await expect(go).toHaveCount(0)
  await tap(page.getByRole('button', { name: 'Back to the dough' }))
  await tap(
    page.locator('section').filter({ hasText: 'Loaf volume' }).getByRole('button', { name: 'Piece 1 not read yet' }),
  )
  // The pad takes a number that was worked out elsewhere, as ever.
  await typeNumber(tablet, '24')
  await tap(go)
  await expect(page.getByText(/is not checked today/)).toHaveCount(0)
  await tap(page.getByRole('button', { name: 'Back to the pad' }))
  await expect(page.getByText('24mL')).toBeVisible()
  expect(faults).toEqual([])
  await context.close()
})
