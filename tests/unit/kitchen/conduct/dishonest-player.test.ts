import { beforeAll, describe, expect, it } from 'vitest'
import { seededRandom } from '@/lib/calc/random/seeded-random'
import { Floor } from '@/tests/support/game/floor'
import { outcomeOf } from '@/tests/support/game/outcome'
import { playTrial, type Player } from '@/tests/support/game/player'
import { draftOf, breadsOf, setupOf } from '@/tests/support/game/world'
import { forLong } from '@/tests/support/long'
import { rateCheck } from '@/tests/support/rate-check'
import { mostInNinetyNine } from '@/tests/support/simulated-trial'

const TRIALS = forLong(1000, 10_000)
/** In %, each larger than the one before: what is not better by one is not better by the next. */
const margins = [1, 2, 3] as const

const honest: Player = { mornings: 'as-planned', hand: 'honest' }
const ways = {
  shameless: { mornings: 'as-planned', hand: 'shameless' },
  mending: { mornings: 'as-planned', hand: 'mending' },
  quiet: { mornings: 'as-planned', hand: 'quiet' },
  waiting: { mornings: 'waits', hand: 'honest' },
  hasty: { mornings: 'at-once', hand: 'honest' },
} satisfies Record<string, Player>
type Way = keyof typeof ways
const wayNames = Object.keys(ways) as Way[]
/** Every way gets every draft. */
const wayOf = (seed: number): Way => wayNames[Math.floor(seed / 8) % wayNames.length]!

type Trial = {
  seed: number
  /** By margin: whether the page says 'better', and whether it says nothing beside it. */
  better: boolean[]
  plain: boolean[]
  /** Every move with what came of it. */
  moves: string[]
  /** Sentences without their figures. */
  listed: string[]
}

/** The same breads in the same order, for each of these players. */
function played(seed: number, ...players: Player[]): Trial[] {
  const draft = draftOf(seed)
  const name = `equal breads ${seed}`
  const setup = setupOf(name, draft)
  return players.map((player) => {
    const random = seededRandom(`${name} ${player.hand}`)
    return trialOf(seed, playTrial(new Floor(setup), breadsOf(name, draft.loaves), player, random))
  })
}

function trialOf(seed: number, trial: ReturnType<typeof playTrial>): Trial {
  const found: Trial = {
    seed,
    better: margins.map(() => false),
    plain: margins.map(() => false),
    moves: trial.played.map(({ move, outcome }) => `${move.do} ${outcome}`),
    listed: [],
  }
  for (const [i, margin] of margins.entries()) {
    const { isBetter, listed } = outcomeOf(trial.floor, margin)
    found.listed = listed.map((sentence) => sentence.replace(/\d+/g, '#'))
    if (!isBetter) break
    found.better[i] = true
    found.plain[i] = listed.length === 0
  }
  return found
}

describe('a player with every legal move, on equal breads', () => {
  let fair: Trial[]
  let foul: Trial[]
  beforeAll(
    () => {
      const seeds = Array.from({ length: TRIALS }, (_, seed) => seed)
      const both = seeds.map((seed) => played(seed, honest, ways[wayOf(seed)]))
      fair = both.map(([first]) => first!)
      foul = both.map(([, second]) => second!)
    },
    forLong(180_000, 1_800_000),
  )
  const count = (trials: readonly Trial[], by: 'better' | 'plain', i: number) =>
    trials.filter((one) => one[by][i]).length
  const by = (way: Way) => foul.filter(({ seed }) => wayOf(seed) === way)
  /** What honest baking comes to in so many trials, in all but one of a hundred. */
  const bound = (n: number, i: number) => mostInNinetyNine(n, count(fair, 'plain', i) / TRIALS)

  rateCheck({
    what: 'equal breads that nobody played with are called better',
    stated: 0.025,
    count: () => ({ trials: TRIALS, wrong: count(fair, 'better', 0) }),
  })

  describe.each(margins.map((margin, i) => ({ margin, i })))('at a margin of $margin %', ({ i }) => {
    it('is called better with nothing listed beside it no more often than who bakes honestly', () => {
      expect(count(foul, 'plain', i)).toBeLessThanOrEqual(bound(TRIALS, i))
      for (const way of wayNames) expect(count(by(way), 'plain', i), way).toBeLessThanOrEqual(bound(by(way).length, i))
    })

    it('would be, were it not listed: what the rules let through pays', () => {
      for (const way of ['shameless', 'waiting'] as const)
        expect(count(by(way), 'better', i)).toBeGreaterThan(bound(by(way).length, i))
    })
  })

  it('gets, by what is done to readings and doughs, no plain verdict that the same breads would not have given', () => {
    for (const { seed, plain } of foul)
      if (ways[wayOf(seed)].hand !== 'honest')
        for (const [i, isPlain] of plain.entries())
          if (isPlain) expect([seed, fair[seed]!.plain[i]]).toEqual([seed, true])
  })

  it('finds, of which nothing is listed, only what changes nothing: dates, and moves that are undone at once', () => {
    const honestMoves = new Set(fair.flatMap(({ moves }) => moves))
    const quiet = new Set(by('quiet').flatMap(({ moves }) => moves.filter((move) => !honestMoves.has(move))))
    expect([...quiet].filter((move) => move.endsWith(' done')).sort()).toEqual(['date done', 'undo done'])
  })

  it('has tried every kind of move, and met every rule', () => {
    const moves = new Set(foul.flatMap((trial) => trial.moves))
    for (const move of [
      'wait',
      'begin',
      'move',
      'undo',
      'note',
      'find',
      'sign',
      'count',
      'read',
      'correct',
      'send',
      'settle',
      'weigh',
      'again',
      'day',
      'swap',
      'date',
      'close',
    ])
      expect([move, moves.has(`${move} done`)]).toEqual([move, true])
    for (const met of [
      'move read-before-any-cause',
      'move begun-so-baked',
      'read no-further-repeat',
      'read reading-there',
      'read too-big',
      'correct no-further-repeat',
      'correct reading-there',
      'send no-further-repeat',
      'file row-there',
      'undo undo-too-late',
      'undo nothing-to-undo',
      'sign own-found-cause',
      'begin stale',
      'begin missing',
      'again not-out',
      'again baked-again-already',
      'again day-added-for',
      'again mixing-day-over',
      'day day-whole',
      'day day-added-for',
      'swap not-of-one-day',
      'swap exchange-of-waiting',
      'date day-begun',
      'weigh differs-so-weigh',
      'weigh in-which-unit',
      'undo undo-built-on',
      'close stale',
    ])
      expect([met, moves.has(met)]).toEqual([met, true])
    const listed = new Set(foul.flatMap((trial) => trial.listed))
    for (const [sentence, isListed] of listedAtLeast(listed)) expect([sentence, isListed]).toEqual([sentence, true])
  })
})

/** Parts of sentences that some trial has to have, and whether one has. */
function listedAtLeast(listed: ReadonlySet<string>): [string, boolean][] {
  return [
    ', lost: ',
    ', set aside: ',
    'noted # Mar',
    'seen and signed by Lars',
    'Nobody else signed it',
    'reading was corrected',
    'readings were corrected',
    'pieces made',
    'the plan asks for #',
    'the third is not taken',
    'too late for its place',
    'was baked again as dough',
    'exchanged their places',
    'was added, because',
    'weighed otherwise than planned',
    'weighing was corrected',
    'not written of every line',
    'not written what was weighed',
    'begun in another order',
    'not baked: ',
    'more than # hours apart',
    'less than # hours apart',
  ].map((part) => [part, [...listed].some((sentence) => sentence.includes(part))])
}
