import { afterAll, beforeAll, expect, it } from 'vitest'
import { seededRandom } from '@/lib/calc/random/seeded-random'
import { wentWrongSentences } from '@/app/(desk)/trials/[trialId]/result/went-wrong-sentences'
import { resultForms } from '@/app/(desk)/trials/[trialId]/result/result-forms'
import { db } from '@/lib/db/client'
import { loadRangeFacts } from '@/lib/kitchen/readings/load-range-facts'
import { contentOfTrial } from '@/lib/kitchen/results/content-of-trial'
import { getResult } from '@/lib/kitchen/amendments/get-result'
import { declaredOf, readTrial } from '@/lib/kitchen/results/load-evidence'
import { makeApprovedTrial, type ApprovedTrial } from '../../support/approved-trial'
import { makeBakery, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import { Book } from '../../support/game/book'
import { Floor, type FloorSetup } from '../../support/game/floor'
import { gameBakery, outcomeOf, verdictsOf } from '../../support/game/outcome'
import { playTrial, type Player } from '../../support/game/player'
import { breadsOf } from '../../support/game/world'
import { forLong } from '../../support/long'

const GAMES = forLong(20, 100)
const loaves = 2

let database: FreshDatabase
beforeAll(async () => {
  database = await freshDatabase()
})
afterAll(() => database.drop())

const hands: readonly Player[] = [
  { mornings: 'as-planned', hand: 'shameless' },
  { mornings: 'as-planned', hand: 'shameless' },
  { mornings: 'waits', hand: 'shameless' },
  { mornings: 'at-once', hand: 'shameless' },
  { mornings: 'as-planned', hand: 'honest' },
]

/** The floor of a trial as it stands in the database, before anything is baked. */
async function floorOf({ bakeryId, head }: TestBakery, { trialId }: ApprovedTrial): Promise<Floor> {
  const { measures, doughs } = await contentOfTrial(db(), bakeryId, trialId)
  const trial = (await readTrial(db(), bakeryId, trialId))!
  const { state: _, piecesPerBatch, ...declared } = declaredOf(trial)
  const setup: FloorSetup = {
    trialId,
    declared,
    primary: declared.measure,
    piecesPerBatch,
    measures,
    ranges: await db().$transaction((tx) => loadRangeFacts(tx, bakeryId, trialId, measures)),
    doughs: doughs.map(({ id, code, arm, day, plannedOrder }) => ({ id, code, arm, day, plannedOrder })),
    player: { bakeryId, id: head.personId, name: head.name },
    begin: testNow,
  }
  return new Floor(setup)
}

it('the commands let through what the pure rules do, and come to the same verdict with the same things listed', async () => {
  const verdicts = new Set<string | null>()
  const [done, refused] = [new Set<string>(), new Set<string>()]
  for (let game = 0; game < GAMES; game++) {
    const bakery = await makeBakery('Mill Row')
    const trial = await makeApprovedTrial(bakery, { days: 2, batchesPerArm: 1 + (game % 2), pieces: loaves })
    const name = `commands ${game}`
    // Every other trial has a dough that is better, so that there are verdicts to agree on.
    const world = breadsOf(name, loaves, game % 2 === 0 ? 0 : 0.25)
    const floor = await floorOf(bakery, trial)
    const pure = playTrial(floor, world, hands[game % hands.length]!, seededRandom(name))

    const book = new Book(bakery, trial, testNow)
    for (const [at, { move, outcome }] of pure.played.entries()) {
      expect([game, at, move, await book.play(move)]).toEqual([game, at, move, outcome])
      if (outcome === 'done') done.add(move.do)
      else refused.add(outcome)
    }
    const result = valueOf(await getResult.call(book.caller(), { trialId: trial.trialId }))
    const { comparison } = result.analysis
    const forms = resultForms({
      result,
      measureCode: result.trial.measure.code,
      bakery: gameBakery,
      language: 'en',
    })
    const expected = outcomeOf(pure.floor, result.declared.margin)
    expect([game, verdictsOf(result.headline.comparison)]).toEqual([
      game,
      { verdicts: expected.verdicts, isBetter: expected.isBetter },
    ])
    // That nothing is written of weighing is said of each of these trials; all else must be what the pure rules list.
    const listed = wentWrongSentences({ ...result, weighings: null }, comparison?.flags ?? [], gameBakery, forms)
    expect([game, listed]).toEqual([game, expected.listed])
    for (const verdict of expected.verdicts) verdicts.add(verdict)
  }
  expect([...verdicts]).toEqual(expect.arrayContaining(['better', 'undecided', null]))
  expect([...done]).toEqual(
    expect.arrayContaining(['correct', 'note', 'find', 'sign', 'send', 'settle', 'undo', 'count']),
  )
  expect(refused.size).toBeGreaterThan(6)
}, 300_000)
