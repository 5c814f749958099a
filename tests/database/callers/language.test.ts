import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { z } from 'zod'
import { db } from '@/lib/db/client'
import { command } from '@/lib/kitchen/command'
import { findCaller } from '@/lib/kitchen/find-caller'
import { changeSettings } from '@/lib/kitchen/people/change-settings'
import { chooseLanguage } from '@/lib/kitchen/people/choose-language'
import { getAccount } from '@/lib/kitchen/people/get-account'
import { getSettings } from '@/lib/kitchen/people/get-settings'
import { decidePlan } from '@/lib/kitchen/trials/decide-plan'
import { draftTrial } from '@/lib/kitchen/trials/draft-trial'
import { proposePlan } from '@/lib/kitchen/trials/propose-plan'
import { makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import { makeTrialStores, trialContentOf } from '../../support/trials'

let database: FreshDatabase
let bakery: TestBakery

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery()
})
afterAll(() => database.drop())

const settings = {
  bakeryName: 'Mill Row',
  worksAlone: false,
  costChangeLimitPct: 1,
  dayTurnsAtH: 0,
  stationIdleMin: 10,
  pinLastsH: 4,
  timeZone: 'Europe/Berlin',
  locale: 'en-GB',
  currency: 'EUR',
  region: 'eu',
  massUnits: 'metric',
  temperatureUnits: 'celsius',
}
const chosenBy = async () => (await findCaller(bakery.early.caller, testNow))?.language

describe('a language that is chosen', () => {
  it('is the person’s, else the bakery’s, else none', async () => {
    expect(await chosenBy()).toBeNull()
    valueOf(await changeSettings.call(bakery.owner.caller, { ...settings, language: 'en', seenRevision: 1 }))
    expect(await chosenBy()).toBe('en')
    expect(valueOf(await getSettings.call(bakery.owner.caller, {})).language).toBe('en')
    expect(valueOf(await getAccount.call(bakery.early.caller, {})).language).toBeNull()
    valueOf(await changeSettings.call(bakery.owner.caller, { ...settings, language: null, seenRevision: 2 }))
    expect(await chosenBy()).toBeNull()
    valueOf(await chooseLanguage.call(bakery.early.caller, { language: 'en' }))
    expect(await chosenBy()).toBe('en')
    expect(valueOf(await getAccount.call(bakery.early.caller, {})).language).toBe('en')
    expect((await findCaller(bakery.head.caller, testNow))?.language).toBeNull()
    valueOf(await chooseLanguage.call(bakery.early.caller, { language: null }))
    expect(await chosenBy()).toBeNull()
  })

  it.each(['en-XA', 'tlh', '', 'EN', 'constructor'])(
    'is never %j: there are no words in it, or they are for screens alone',
    async (language) => {
      expect(refusalOf(await chooseLanguage.call(bakery.early.caller, { language }))).toMatch(/^invalid language:/)
      expect(
        refusalOf(await changeSettings.call(bakery.owner.caller, { ...settings, language, seenRevision: 3 })),
      ).toMatch(/^invalid language:/)
    },
  )

  it('is refused by the database as well when it is the pseudo-language', async () => {
    const key = { bakery: bakery.bakeryId, person: bakery.early.personId }
    await expect(
      db()
        .$executeRaw`UPDATE person SET language = 'en-XA'::language WHERE bakery_id = ${key.bakery}::uuid AND id = ${key.person}::uuid`,
    ).rejects.toThrow('en-XA')
    await expect(
      db().$executeRaw`UPDATE bakery SET language = 'en-XA'::language WHERE bakery_id = ${key.bakery}::uuid`,
    ).rejects.toThrow('en-XA')
  })
})

describe('words that are kept', () => {
  const keeps = command({
    name: 'test.keeps',
    input: z.strictObject({}),
    right: 'own-account',
    run: async ({ language }) => ({ value: language, audit: {} }),
  })

  it.each(['en-XA', 'en', undefined, 'tlh', 'constructor'])(
    'are in a language that exists when the browser asks for %j',
    async (browserLanguage) => {
      expect(valueOf(await keeps.call({ ...bakery.early.caller, browserLanguage } as never, {}))).toBe('en')
    },
  )

  it('are English in a decision that was made on a screen in the pseudo-language, and no field can ask otherwise', async () => {
    const stores = await makeTrialStores(bakery, testNow)
    const { trialId } = valueOf(await draftTrial.call(bakery.early.caller, { content: trialContentOf(stores) }))
    const { revision, planHash } = valueOf(await proposePlan.call(bakery.early.caller, { trialId, seenRevision: 1 }))
    const pseudo = { ...bakery.head.caller, browserLanguage: 'en-XA' } as const
    const decision = { trialId, seenRevision: revision, planHash, verdict: 'approved', note: '' }
    expect(refusalOf(await decidePlan.call(pseudo, { ...decision, language: 'en-XA' }))).toBe(
      'invalid language:unknown-field',
    )
    valueOf(await decidePlan.call(pseudo, decision))
    const { meaning } = await db().planDecision.findFirstOrThrow({ where: { bakeryId: bakery.bakeryId, trialId } })
    expect(meaning).toBe('I have checked this plan and approve it: it may be baked as it stands.')
    const entry = await db().auditEntry.findFirstOrThrow({
      where: { bakeryId: bakery.bakeryId, action: 'trials.decide-plan' },
    })
    expect(entry.entryText).toContain(meaning)
    expect(entry.entryText).not.toContain('⟦')
  })
})
