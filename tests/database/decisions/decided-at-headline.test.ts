import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { canonicalText } from '@/lib/documents/canonical-text'
import { shownOfFormat3, type ShownOfFormat3 } from '@/lib/documents/evidence-shown/shown-of-format-3'
import { getResult } from '@/lib/kitchen/amendments/get-result'
import { draftChange } from '@/lib/kitchen/decisions/draft-change'
import { getDecision } from '@/lib/kitchen/decisions/get-decision'
import { notShown } from '@/lib/kitchen/decisions/rules'
import { checkFile } from '@/lib/kitchen/evidence/check-file'
import { isSound } from '@/lib/kitchen/evidence/finding'
import { getFile } from '@/lib/kitchen/evidence/get-file'
import { getVersion } from '@/lib/kitchen/formulas/get-version'
import { signOffVersion } from '@/lib/kitchen/formulas/sign-off-version'
import { closeTrial } from '@/lib/kitchen/results/close-trial'
import { noteFoundCause } from '@/lib/kitchen/shifts/note-found-cause'
import { signFoundCause } from '@/lib/kitchen/shifts/sign-found-cause'
import { makeBakery, valueOf, type TestBakery } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import { makeEndedTrial } from '../../support/ended-trial'
import { forgedFile, partOf } from '../../support/forged-file'

let database: FreshDatabase
let bakery: TestBakery

beforeAll(async () => {
  database = await freshDatabase()
})
beforeEach(async () => {
  bakery = await makeBakery('Mill Row')
})
afterAll(() => database.drop())

/** Malt lifts the loaf, but one control is huge; who likes malt finds a cause for that one, and a friend signs it. */
async function withoutTheHugeOne() {
  const { trialId, revision, armIds } = await makeEndedTrial(bakery, {
    state: 'baking',
    content: { batchesPerArm: 2 },
    hugeMl: 700,
  })
  const huge = await db().batch.findFirstOrThrow({
    where: { trialId, kind: 'dough', arm: { position: 0 }, mixingDay: { number: 2 } },
    orderBy: { plannedOrder: 'asc' },
  })
  const found = { batchId: huge.id, object: 'ingredient_left', what: 'The salt is in its tub.' }
  const { foundCauseId } = valueOf(await noteFoundCause.call(bakery.early.caller, found))
  valueOf(await signFoundCause.call(bakery.late.caller, { foundCauseId, seenRevision: huge.revision }))
  valueOf(
    await closeTrial.call(bakery.head.caller, {
      trialId,
      seenRevision: revision,
      early: false,
      reason: 'Closed in the test.',
    }),
  )
  const closed = await db().trial.findFirstOrThrow({ where: { id: trialId } })
  return { trialId, revision: closed.revision, malt: armIds[1]!, code: huge.code }
}

async function decidedAndSigned({ trialId, revision, malt }: Awaited<ReturnType<typeof withoutTheHugeOne>>) {
  const asked = { trialId, armId: malt, seenRevision: revision, reason: 'It gives more.' }
  const drafted = valueOf(await draftChange.call(bakery.head.caller, asked))
  const { decisionId, ...key } = drafted
  for (const { caller } of [bakery.head, bakery.owner]) {
    const { revision: seenRevision, contentHash: seenHash } = valueOf(await getVersion.call(caller, key))
    const { versionId } = key
    valueOf(await signOffVersion.call(caller, { versionId, seenRevision, seenHash, effectiveAt: null }))
  }
  return decisionId
}

const wrong = (text: string) =>
  checkFile(text).flatMap((finding) => (isSound(finding) ? [] : [`${finding.what} ${finding.outcome}`]))
const bare = ({ id: _, name: __, good: ___, ...arm }: ShownOfFormat3['arms'][number]) => arm

it('a dough that was set aside with a friend makes nothing better on the page of the decision', async () => {
  const trial = await withoutTheHugeOne()
  const { trialId, malt, code } = trial
  const result = valueOf(await getResult.call(bakery.owner.caller, { trialId }))
  expect(result.analysis.comparison?.arms[1]?.verdict?.verdict).toBe('better')
  expect(result.headline.comparison?.arms[1]?.verdict?.verdict).toBe('undecided')

  const decisionId = await decidedAndSigned(trial)
  for (const { caller } of [bakery.owner, bakery.early]) {
    const { evidence } = valueOf(await getDecision.call(caller, { decisionId }))
    const [control, chosen] = evidence!.arms
    expect(evidence!.lessFavourableOf).toEqual([code])
    expect([control!.batches, chosen!.batches]).toEqual([5, 6])
    expect(chosen).toMatchObject({ id: malt, verdict: { verdict: 'undecided' } })
    expect(chosen!.effect).toEqual(result.headline.comparison!.arms[1]!.effect)
    expect(notShown(chosen!, evidence!.isIndication)).toBe('undecided')
  }
})

it('what is signed is frozen with the headline, and a better one in its place is found, whoever made all hashes fit', async () => {
  const trial = await withoutTheHugeOne()
  await decidedAndSigned(trial)
  const { text } = valueOf(await getFile.call(bakery.owner.caller, { trialId: trial.trialId }))
  expect(wrong(text)).toEqual([])
  expect(partOf(text, 'shown')).toMatchObject({
    arms: [{}, { verdict: { verdict: 'better' } }, {}],
    headline: { arms: [{}, { verdict: { verdict: 'undecided' } }, {}], lessFavourableOf: [trial.code] },
  })
  const withHeadline = (change: (shown: ShownOfFormat3) => ShownOfFormat3['headline']) =>
    wrong(
      forgedFile(text, 'shown', (part) => {
        const shown = shownOfFormat3.parse(JSON.parse(part))
        return canonicalText({ ...shown, headline: change(shown) })
      }),
    )
  const found = ['figures differs', 'signed differs', 'evidence differs']
  expect(withHeadline(({ arms, headline }) => ({ ...headline, arms: arms.map(bare) }))).toEqual(found)
  expect(withHeadline(({ headline }) => ({ ...headline, lessFavourableOf: [] }))).toEqual(found)
  expect(withHeadline(({ headline }) => ({ ...headline, isIndication: true }))).toEqual(found)
})

it('where nothing was set aside so, the headline is the comparison as it is', async () => {
  const { trialId } = await makeEndedTrial(bakery)
  const { text } = valueOf(await getFile.call(bakery.owner.caller, { trialId }))
  const { arms, isIndication, headline } = shownOfFormat3.parse(partOf(text, 'shown'))
  expect(headline).toEqual({ isIndication, arms: arms.map(bare), lessFavourableOf: [] })
})

it('a file that was made before it was named says nothing of it, and agrees as it did', async () => {
  const { trialId } = await withoutTheHugeOne()
  const { text } = valueOf(await getFile.call(bakery.owner.caller, { trialId }))
  const former = forgedFile(text, 'shown', (part) => {
    const { headline: _, ...shown } = shownOfFormat3.parse(JSON.parse(part))
    return canonicalText({ ...shown, format: 2 })
  })
  expect(former).not.toContain('lessFavourableOf')
  expect(wrong(former)).toEqual([])
  expect(wrong(forgedFile(former, 'shown', (part) => part.replace('"better"', '"worse"')))).toEqual(['figures differs'])
})
