import { afterAll, beforeAll, expect, it } from 'vitest'
import { seededRandom } from '@/lib/calc/random/seeded-random'
import { wentWrongSentences } from '@/app/(desk)/trials/[trialId]/result/went-wrong-sentences'
import { resultForms } from '@/app/(desk)/trials/[trialId]/result/result-forms'
import { db } from '@/lib/db/client'
import { loadRangeFacts } from '@/lib/kitchen/readings/load-range-facts'
import { contentOfTrial } from '@/lib/kitchen/results/content-of-trial'
import { getResult } from '@/lib/kitchen/amendments/get-result'
import { declaredOf, readTrial } from '@/lib/kitchen/results/load-evidence'
import { planOfText } from '@/lib/kitchen/trials/plan-of-text'
import { linesOfPlan } from '@/lib/kitchen/weighings/lines-of-plan'
import { makeApprovedTrial, type ApprovedTrial } from '../../support/approved-trial'
import { makeBakery, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import { Book } from '../../support/game/book'
import { Floor, type FloorSetup } from '../../support/game/floor'
import { hourMs, type LineSaid, type Move, type Outcome } from '../../support/game/moves'
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
  { mornings: 'as-planned', hand: 'mending' },
  { mornings: 'waits', hand: 'mending' },
  { mornings: 'at-once', hand: 'mending' },
  { mornings: 'as-planned', hand: 'honest' },
]

/** The floor of a trial as it stands in the database, before anything is baked. */
async function floorOf({ bakeryId, head }: TestBakery, { trialId }: ApprovedTrial): Promise<Floor> {
  const { measures, doughs } = await contentOfTrial(db(), bakeryId, trialId)
  const trial = (await readTrial(db(), bakeryId, trialId))!
  const { state: _, piecesPerBatch, ...declared } = declaredOf(trial)
  const { planText, planHash } = await db().trial.findUniqueOrThrow({
    where: { bakeryId_id: { bakeryId, id: trialId } },
  })
  const plan = planOfText(planText!, planHash!)
  const setup: FloorSetup = {
    trialId,
    declared,
    primary: declared.measure,
    piecesPerBatch,
    measures,
    ranges: await db().$transaction((tx) => loadRangeFacts(tx, bakeryId, { trialId }, measures)),
    doughs: doughs.map(({ id, code, arm, day, plannedOrder }) => ({ id, code, arm, day, plannedOrder })),
    plan: { arms: plan.arms, order: plan.order! },
    lines: linesOfPlan(plan),
    timeZone: trial.bakery.timeZone,
    player: { bakeryId, id: head.personId, name: head.name },
    begin: testNow,
  }
  return new Floor(setup)
}

/** The page of a closed trial says what the pure rules say. */
async function expectAlike(game: number | string, floor: Floor, book: Book, { trialId }: ApprovedTrial) {
  const result = valueOf(await getResult.call(book.caller(), { trialId }))
  const { comparison } = result.analysis
  const forms = resultForms({ result, measureCode: result.trial.measure.code, bakery: gameBakery, language: 'en' })
  const expected = outcomeOf(floor, result.declared.margin)
  expect([game, verdictsOf(result.headline.comparison)]).toEqual([
    game,
    { verdicts: expected.verdicts, isBetter: expected.isBetter },
  ])
  const listed = wentWrongSentences(result, comparison?.flags ?? [], gameBakery, forms)
  expect([game, listed]).toEqual([game, expected.listed])
  return expected
}

it('the commands let through what the pure rules do, and come to the same verdict with the same things listed', async () => {
  const verdicts = new Set<string | null>()
  const [done, refused] = [new Set<string>(), new Set<string>()]
  for (let game = 0; game < GAMES; game++) {
    const bakery = await makeBakery('Mill Row')
    const trial = await makeApprovedTrial(bakery, {
      days: 2,
      batchesPerArm: 1 + (game % 2),
      pieces: loaves,
      isDosed: true,
    })
    const name = `commands ${game}`
    // Every other trial has a dough that is better, so that there are verdicts to agree on.
    const world = breadsOf(name, loaves, game % 2 === 0 ? 0 : 0.25)
    const floor = await floorOf(bakery, trial)
    const pure = playTrial(floor, world, hands[game % hands.length]!, seededRandom(name))

    const book = new Book(bakery, trial, floor.setup.lines, testNow)
    for (const [at, { move, outcome }] of pure.played.entries()) {
      expect([game, at, move, await book.play(move)]).toEqual([game, at, move, outcome])
      if (outcome === 'done') done.add(move.do)
      else refused.add(outcome)
    }
    const expected = await expectAlike(game, pure.floor, book, trial)
    for (const verdict of expected.verdicts) verdicts.add(verdict)
  }
  expect([...verdicts]).toEqual(expect.arrayContaining(['better', 'undecided', null]))
  expect([...done]).toEqual(
    expect.arrayContaining([
      ...['correct', 'note', 'find', 'sign', 'send', 'settle', 'undo', 'count'],
      ...['weigh', 'again', 'day', 'swap', 'date'],
    ]),
  )
  expect(refused.size).toBeGreaterThan(9)
}, 300_000)

it('each rule of repairs and weighings stops the command at the move at which it stops the pure rules', async () => {
  const bakery = await makeBakery('Mill Row')
  const trial = await makeApprovedTrial(bakery, { days: 2, pieces: loaves, isDosed: true })
  const floor = await floorOf(bakery, trial)
  const book = new Book(bakery, trial, floor.setup.lines, testNow)
  const [one, other, later, last] = floor.setup.doughs.map(({ code }) => code)
  const dose = floor.setup.lines.findIndex(({ isDose }) => isDose)
  const weigh = (dough: string, said: Partial<LineSaid>): Move => ({
    do: 'weigh',
    dough,
    lines: [{ line: dose, how: 'weighed', massG: 0, ...said }],
  })
  const moves: [Move, Outcome][] = [
    [{ do: 'again', dough: one! }, 'not-out'],
    [{ do: 'day', day: 1 }, 'day-whole'],
    [{ do: 'day', day: 3 }, 'not-found'],
    [{ do: 'swap', dough: one!, other: later! }, 'not-of-one-day'],
    [{ do: 'swap', dough: one!, other: other! }, 'done'],
    [{ do: 'begin', dough: one! }, 'missing'],
    [weigh(other!, {}), 'batch-not-begun'],
    [{ do: 'begin', dough: other! }, 'done'],
    [{ do: 'swap', dough: one!, other: other! }, 'exchange-of-waiting'],
    [{ do: 'date', day: 1, date: '2026-03-09' }, 'day-begun'],
    [{ do: 'date', day: 2, date: '2026-03-04' }, 'done'],
    [weigh(other!, { how: 'ticked' }), 'differs-so-weigh'],
    [weigh(other!, { massG: 5000 }), 'in-which-unit'],
    [weigh(other!, { massG: 2.5 }), 'done'],
    [weigh(other!, { how: 'left_out' }), 'done'],
    [{ do: 'move', dough: other!, to: 'lost' }, 'done'],
    [{ do: 'again', dough: other! }, 'done'],
    [{ do: 'undo', dough: other!, after: 5 }, 'undo-built-on'],
    [{ do: 'again', dough: other! }, 'baked-again-already'],
    [{ do: 'begin', dough: one! }, 'done'],
    [{ do: 'move', dough: one!, to: 'set_aside' }, 'done'],
    [{ do: 'day', day: 1 }, 'done'],
    [{ do: 'undo', dough: one!, after: 5 }, 'undo-built-on'],
    [{ do: 'again', dough: one! }, 'day-added-for'],
    [{ do: 'day', day: 1 }, 'day-added-for'],
    [{ do: 'begin', dough: last!, early: true }, 'done'],
    [{ do: 'move', dough: last!, to: 'lost' }, 'done'],
    [{ do: 'undo', dough: last!, after: 5 }, 'done'],
    [{ do: 'again', dough: last! }, 'not-out'],
    [{ do: 'move', dough: later!, to: 'not_baked' }, 'done'],
    [{ do: 'wait', ms: 36 * hourMs }, 'done'],
    [{ do: 'again', dough: later! }, 'mixing-day-over'],
    [{ do: 'day', day: 2 }, 'done'],
    [{ do: 'close' }, 'done'],
    [{ do: 'again', dough: later! }, 'trial-stopped'],
    [{ do: 'day', day: 2 }, 'trial-stopped'],
    [{ do: 'swap', dough: one!, other: other! }, 'trial-stopped'],
    [{ do: 'date', day: 2, date: null }, 'trial-stopped'],
    [weigh(last!, {}), 'trial-stopped'],
  ]
  for (const [at, [move, outcome]] of moves.entries()) {
    expect([at, move, floor.play(move)]).toEqual([at, move, outcome])
    expect([at, move, await book.play(move)]).toEqual([at, move, outcome])
  }
  const { listed } = await expectAlike('by hand', floor, book, trial)
  expect(listed.filter((sentence) => /baked again|exchanged|was added/.test(sentence))).toHaveLength(4)
}, 120_000)
