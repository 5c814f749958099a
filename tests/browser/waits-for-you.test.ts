import { decidePlan } from '../../lib/kitchen/trials/decide-plan'
import { draftTrial } from '../../lib/kitchen/trials/draft-trial'
import { proposePlan } from '../../lib/kitchen/trials/propose-plan'
import { expect, test } from '../support/app'
import { callerOf, valueOf, type TestPerson } from '../support/bakery'
import { makeTrialStores, trialContentOf } from '../support/trials'

const asSelf = (person: TestPerson) => callerOf(person.sessionSecret, new Date(), person.password)

test('the first page says what waits for whoever signs in, leads to it, and is silent when it is done', async ({
  as,
  bakery,
  app,
}) => {
  const content = trialContentOf(await makeTrialStores(bakery, new Date()))
  const { trialId } = valueOf(await draftTrial.call(asSelf(bakery.early), { content }))
  const proposed = valueOf(await proposePlan.call(asSelf(bakery.early), { trialId, seenRevision: 1 }))

  const head = await as(bakery.head)
  await head.goto('/')
  const waits = head.getByRole('region', { name: 'Waits for you' })
  await expect(waits.getByText('One plan waits for your decision')).toBeVisible()
  await waits.getByRole('link', { name: content.question }).click()
  await expect(head).toHaveURL(`${app.url}/trials/${trialId}`)
  await expect(head.getByRole('button', { name: 'Sign the decision' })).toBeVisible()

  const early = await as(bakery.early)
  await early.goto('/')
  const waitsForEarly = early.getByRole('region', { name: 'Waits for you' })
  await expect(waitsForEarly).toContainText('Nothing waits for you.')

  valueOf(
    await decidePlan.call(asSelf(bakery.owner), {
      trialId,
      seenRevision: proposed.revision,
      planHash: proposed.planHash,
      verdict: 'sent_back',
      note: 'Too few loaves.',
    }),
  )
  await head.goto('/')
  await expect(waits).toContainText('Nothing waits for you.')
  await early.reload()
  await expect(waitsForEarly.getByText('One plan came back to you')).toBeVisible()
  await waitsForEarly.getByRole('link', { name: content.question }).click()
  await expect(early.getByText('Too few loaves.').first()).toBeVisible()
})

test('a record that did not fit together is said first to the owner, and not to the shift', async ({
  as,
  bakery,
  app,
}) => {
  await app.look.query(
    `INSERT INTO record_check (bakery_id, at, entries, fault_number, fault) VALUES ($1, now(), 7, 3, 'altered')`,
    [bakery.bakeryId],
  )
  const owner = await as(bakery.owner)
  await owner.goto('/')
  const alert = owner.getByRole('main').getByRole('alert')
  await expect(alert).toContainText('from entry 3 on: an entry was altered')
  await alert.getByRole('link', { name: 'To the record' }).click()
  await expect(owner).toHaveURL(`${app.url}/team/record?check=all`)
  await expect(owner.getByRole('complementary')).toContainText('it does not fit together from entry 3 on')
  const early = await as(bakery.early)
  await early.goto('/')
  await expect(early.getByRole('heading', { name: 'Waits for you' })).toBeVisible()
  await expect(early.getByRole('main').getByRole('alert')).toHaveCount(0)
})
