import type { Random } from '@/lib/calc/random/seeded-random'
import { nextState } from '@/lib/kitchen/batches/rules'
import { isOutState } from '@/lib/kitchen/conduct/is-out-state'
import { isSameInAll } from '@/lib/kitchen/weighings/lines-of-plan'
import { settleRepeats } from '@/lib/kitchen/readings/settle-repeats.input'
import type { Floor } from './floor'
import { dayMs, hourMs, type LineSaid, type Move, type Outcome } from './moves'
import { figureOf, isListed, isOutOfItsArm } from './outcome'
import { usualG, usualMl, type TrueDough, type World } from './world'

/**
 * `mornings`: on which mornings doughs are begun. `as-planned`; `waits`: the control on a poor morning and the others on a
 * good one, in the drawn order; `at-once`: every mixing day on one morning.
 * `hand`: what is done beside the plan. `honest`: nothing; `shameless`: to what was read, whatever the rules let through;
 * `mending`: also with what was weighed, doughs that are baked again, days and places; `quiet`: only that of which nothing
 * would be listed.
 */
export type Player = {
  mornings: 'as-planned' | 'waits' | 'at-once'
  hand: 'honest' | 'shameless' | 'mending' | 'quiet'
}

/** Every move that was tried, and what came of it, in turn; what a quiet hand only considered is not among them. */
export type Played = { move: Move; outcome: Outcome }

/** So many mornings somebody waits for one that suits. */
const longestWait = 6
/** How much better or worse than most a morning suits, as a share. */
const suits = 0.01

/**
 * Plays a trial to its closing. The player knows which dough is which, what the morning is worth, and each figure as soon
 * as it is read, and wants the test doughs larger. What nobody can see is no move: a figure that was read truly and
 * typed falsely, or read in secret until it pleased.
 * @param random of the player's own choices
 */
export function playTrial(
  start: Floor,
  world: World,
  player: Player,
  random: Random,
): { floor: Floor; played: Played[] } {
  const game = new Game(start, world, player, random)
  game.bakeAll()
  return { floor: game.floor, played: game.played }
}

class Game {
  played: Played[] = []
  /** Some note a reason at every dough before they know for which one they will want it. */
  private readonly notes: boolean
  /** Some do things to doughs, days and weights, too. */
  private readonly mends: boolean
  /** Some write what they weighed when they have seen the loaf, or never. */
  private readonly weighsLate: boolean
  constructor(
    public floor: Floor,
    private readonly world: World,
    private readonly player: Player,
    private readonly random: Random,
  ) {
    this.notes = (player.hand === 'shameless' || player.hand === 'mending') && this.chance(0.3)
    this.mends = player.hand === 'mending' || player.hand === 'quiet'
    this.weighsLate = player.hand === 'mending' && this.chance(0.3)
  }

  bakeAll(): void {
    const tried = new Set<string>()
    const next = () => this.floor.waiting().find(({ code }) => !tried.has(code))
    let day = 0
    for (let dough = next(); dough; dough = next()) {
      if (dough.day !== day) {
        if (day > 0 && this.player.mornings !== 'at-once') this.nextMorning()
        day = dough.day
        this.arrange()
        dough = next()!
      }
      tried.add(dough.code)
      if (this.player.mornings === 'waits') this.waitFor(dough.arm === 0 ? -1 : 1)
      this.bake(dough)
    }
    this.play({ do: 'close' })
  }

  private bake({ code, arm }: { code: string; arm: number }): void {
    const isShameless = this.player.hand === 'shameless' || this.player.hand === 'mending'
    if (this.play({ do: 'begin', dough: code }) !== 'done') return
    const made = this.world.bake({ code, arm }, this.date())
    const weighs = !this.weighsLate || this.chance(0.5)
    if (weighs) this.weighAll(code, made)
    if (this.notes) this.play({ do: 'note', dough: code })
    if (this.mends && this.chance(0.08)) this.mend(this.pick(beforeTheOven(this.floor, code, this.random)))
    this.play({ do: 'move', dough: code, to: 'in_work' })
    this.play({ do: 'move', dough: code, to: 'baked' })
    if (isOutState(this.floor.dough(code).state)) return
    this.readAll(code, made, arm === 0 ? -1 : 1)
    if (isShameless && this.chance(0.3)) this.tempt(code, made, arm === 0 ? -1 : 1)
    if (!weighs && this.chance(0.8)) this.weighAll(code, made)
    this.finish(code)
    if (this.player.hand !== 'honest') this.tempt(code, made, arm === 0 ? -1 : 1)
    this.finish(code)
    if (isShameless && this.chance(0.01)) this.play({ do: 'close' })
  }

  /** Before a mixing day is begun: what is to be when, and in which order. */
  private arrange(): void {
    if (!this.mends || !this.chance(0.4)) return
    const [first, ...rest] = this.floor.waiting()
    const last = rest.filter(({ day }) => day === first!.day).at(-1)
    const later = rest.find(({ day }) => day !== first!.day)
    const [dough, day] = [first!.code, first!.day]
    const on = new Date(this.floor.now.getTime() + dayMs).toISOString().slice(0, 10)
    this.mend(
      this.pick([
        [{ do: 'date', day, date: on }],
        [
          { do: 'date', day, date: on },
          { do: 'date', day, date: null },
        ],
        ...(last
          ? ([
              [{ do: 'swap', dough, other: last.code }],
              [{ do: 'begin', dough: last.code }],
              [
                { do: 'begin', dough: last.code, early: true },
                { do: 'undo', dough: last.code, after: 5 },
              ],
            ] satisfies Move[][])
          : []),
        ...(later ? ([[{ do: 'swap', dough, other: later.code }]] satisfies Move[][]) : []),
        [
          { do: 'move', dough, to: 'not_baked' },
          { do: 'again', dough },
        ],
        [
          { do: 'move', dough, to: 'not_baked' },
          { do: 'day', day },
        ],
      ]),
    )
  }

  /** What the scale showed of every line, as it was; what all doughs have the same of is ticked. */
  private weighAll(code: string, { doseShare }: TrueDough): void {
    this.play({ do: 'weigh', dough: code, lines: asWeighed(this.floor, code, doseShare) })
  }

  private readAll(code: string, made: TrueDough, wish: 1 | -1): void {
    const { measures, primary } = this.floor.setup
    const whole = { 'dough-temp': made.tempC, 'proof-time': made.proofS, 'water-added': made.waterG }
    for (const { code: measure, level } of measures)
      if (level === 'batch' && measure !== null && measure in whole)
        this.play({
          do: 'read',
          dough: code,
          measure,
          piece: null,
          repeat: 1,
          value: whole[measure as keyof typeof whole],
        })
    made.loaves.forEach((loaf, i) => {
      const at = { dough: code, piece: i + 1 }
      if (primary.code === 'specific-volume')
        this.play({ do: 'read', ...at, measure: 'loaf-mass', repeat: 1, value: loaf.massG })
      const values = [loaf.readMl(), loaf.readMl()]
      values.forEach((value, repeat) => {
        // A first reading that pleases is left alone.
        const isEnough = repeat === 1 && this.player.hand === 'shameless' && wish * (values[0]! - usualMl) > 60
        if (isEnough && this.chance(0.1)) return
        this.play({ do: 'read', ...at, measure: 'loaf-volume', repeat: repeat + 1, value })
      })
      if (settleRepeats({ values, repeats: 2, repeatLimit: null }).needs === 'third')
        this.play({ do: 'read', ...at, measure: 'loaf-volume', repeat: 3, value: loaf.readMl() })
    })
  }

  private finish(code: string): void {
    for (let next = nextState(this.floor.dough(code).state); next; next = nextState(this.floor.dough(code).state))
      if (this.play({ do: 'move', dough: code, to: next }) !== 'done') return
  }

  /** Tries a few things that might move the figure of a dough towards the wish, and keeps what did. */
  private tempt(code: string, made: TrueDough, wish: 1 | -1): void {
    const isQuiet = this.player.hand === 'quiet'
    const usual = this.floor.setup.primary.code === 'specific-volume' ? usualMl / usualG : usualMl
    let before = figureOf(this.floor, code)
    for (let tries = 0; tries < (isQuiet ? 1 : 2); tries++) {
      // What is as it should be is left alone.
      if (before === null || (!isQuiet && wish * (before / usual - 1 - this.world.morning(this.date())) > 0.02)) return
      if (isOutState(this.floor.dough(code).state)) return
      const moves = this.pick(this.temptations(code, made, wish))
      const tried = this.floor.fork()
      const played = moves.map((move): Played => ({ move, outcome: tried.play(move) }))
      const after = figureOf(tried, code)
      const isWished =
        this.isOut(tried, code) || after === null ? wish * (before - usual) < 0 : wish * (after - before) > 0
      if (isQuiet && (!isWished || isListed(tried, code))) continue
      this.floor = tried
      this.played.push(...played)
      before = after
    }
  }

  private temptations(code: string, made: TrueDough, wish: 1 | -1): Move[][] {
    const ofReadings = temptations(this.floor, code, made, wish, this.random)
    return this.mends ? [...ofReadings, ...mendings(this.floor, code)] : ofReadings
  }

  /** Whether a dough is out of the comparison. Who is only shameless with readings weighs nothing otherwise. */
  private isOut(floor: Floor, code: string): boolean {
    return isOutState(floor.dough(code).state) || (this.player.hand !== 'shameless' && isOutOfItsArm(floor, code))
  }

  private waitFor(wish: 1 | -1): void {
    for (let waited = 0; waited < longestWait; waited++) {
      if (wish * this.world.morning(this.date()) > suits) return
      this.nextMorning()
    }
  }

  private nextMorning(): void {
    const { begin } = this.floor.setup
    const next = begin.getTime() + (this.date() + 1) * dayMs
    this.play({ do: 'wait', ms: Math.max(next - this.floor.now.getTime(), hourMs) })
  }

  /** How many mornings after the first. */
  private date(): number {
    return Math.floor((this.floor.now.getTime() - this.floor.setup.begin.getTime()) / dayMs)
  }

  private play(move: Move): Outcome {
    const outcome = this.floor.play(move)
    this.played.push({ move, outcome })
    return outcome
  }

  /** Plays what mends or spoils something; a quiet hand only that of which nothing is listed. */
  private mend(moves: readonly Move[]): void {
    const tried = this.floor.fork()
    const played = moves.map((move): Played => ({ move, outcome: tried.play(move) }))
    if (this.player.hand === 'quiet' && isListed(tried)) return
    this.floor = tried
    this.played.push(...played)
  }

  private chance(share: number): boolean {
    return this.random() < share
  }

  private pick<Item>(items: readonly Item[]): Item {
    return items[Math.floor(this.random() * items.length)]!
  }
}

/** Every line of a dough with so much of its dose. */
function asWeighed(floor: Floor, code: string, doseShare: number): LineSaid[] {
  return floor.setup.lines.map((line, i): LineSaid => {
    const { massG } = line.targets.find(({ arm }) => arm === floor.dough(code).arm)!
    if (isSameInAll(line)) return { line: i, how: 'ticked', massG }
    return { line: i, how: 'weighed', massG: line.isDose ? doseShare * massG : massG }
  })
}

/** A dose that is written otherwise than it was, or as it never can be. */
function falsely(floor: Floor, code: string): { [Way in 'off' | 'right' | 'tick' | 'kilos' | 'leftOut']: LineSaid[] } {
  const line = Math.max(
    0,
    floor.setup.lines.findIndex(({ isDose }) => isDose),
  )
  const { targets } = floor.setup.lines[line]!
  const planned = targets.find(({ arm }) => arm === floor.dough(code).arm)!.massG
  const most = Math.max(...targets.map(({ massG }) => massG))
  const weighed = (massG: number): LineSaid[] => [{ line, how: 'weighed', massG }]
  return {
    off: weighed(planned + 0.4 * most),
    right: weighed(planned),
    tick: [{ line, how: 'ticked', massG: planned }],
    kilos: weighed(1000 * most),
    leftOut: [{ line: 0, how: 'left_out', massG: 0 }],
  }
}

/** What somebody may do with a dough of which nothing is read: put it out of the way, and try again. */
function beforeTheOven(floor: Floor, dough: string, random: Random): Move[][] {
  const { off, right, leftOut, tick, kilos } = falsely(floor, dough)
  const { day } = floor.dough(dough)
  const others = floor.waiting().filter((each) => each.day === day)
  const other = others[Math.floor(random() * others.length)]?.code ?? dough
  return [
    [{ do: 'weigh', dough, lines: off }],
    [{ do: 'weigh', dough, lines: leftOut }],
    [
      { do: 'weigh', dough, lines: off },
      { do: 'weigh', dough, lines: right },
    ],
    [{ do: 'weigh', dough, lines: tick }],
    [{ do: 'weigh', dough, lines: kilos }],
    [
      { do: 'move', dough, to: 'lost' },
      { do: 'again', dough },
      { do: 'again', dough },
      { do: 'undo', dough, after: 5 },
    ],
    [
      { do: 'move', dough, to: 'set_aside' },
      { do: 'day', day },
      { do: 'again', dough },
      { do: 'day', day },
    ],
    [
      { do: 'move', dough, to: 'lost' },
      { do: 'undo', dough, after: 5 },
      { do: 'again', dough },
    ],
    [{ do: 'swap', dough, other }],
    [{ do: 'date', day, date: floor.now.toISOString().slice(0, 10) }],
    [
      { do: 'begin', dough: other, early: true },
      { do: 'weigh', dough: other, lines: right },
    ],
  ]
}

/** What somebody who wants another figure of a dough may think of, each as moves that follow each other. */
function temptations(floor: Floor, code: string, made: TrueDough, wish: 1 | -1, random: Random): Move[][] {
  const measure = 'loaf-volume'
  const piece = 1 + Math.floor(random() * made.loaves.length)
  const at = { measure, piece, repeat: 1 + Math.floor(random() * 2) }
  const there = floor.holding(code, at)?.value ?? usualMl
  const liked = there * (1 + 0.06 * wish)
  const loaf = made.loaves[piece - 1]!
  const best = wish * Math.max(...Array.from({ length: 5 }, () => wish * loaf.readMl()))
  const dough = code
  const spots = made.loaves.flatMap((_, i) => [1, 2].map((repeat) => ({ measure, piece: i + 1, repeat })))
  const anew = spots.map(
    (spot): Move => ({ do: 'correct', dough, at: spot, ...spot, value: usualMl * (1 + 0.03 * wish) }),
  )
  return [
    anew,
    anew,
    anew,
    [{ do: 'correct', dough, at, ...at, value: liked }],
    [{ do: 'correct', dough, at, ...at, value: best }],
    [{ do: 'correct', dough, at, ...at, piece: (piece % made.loaves.length) + 1, value: there }],
    [
      { do: 'correct', dough, at, ...at, repeat: 3, value: there },
      { do: 'read', dough, ...at, value: liked },
    ],
    [{ do: 'read', dough, ...at, value: liked }],
    [{ do: 'read', dough, ...at, repeat: 3, value: best }],
    [{ do: 'read', dough, ...at, repeat: 4, value: best }],
    [{ do: 'read', dough, ...at, piece: made.loaves.length + 1, value: liked }],
    [
      { do: 'send', dough, ...at, value: liked },
      { do: 'settle', dough, take: true },
    ],
    [
      { do: 'send', dough, ...at, value: liked },
      { do: 'settle', dough, take: false },
    ],
    [{ do: 'send', dough, ...at, value: liked }],
    [{ do: 'send', dough, ...at, repeat: 3, value: best }],
    [{ do: 'file', dough, piece, values: [liked, liked] }],
    [{ do: 'move', dough, to: 'lost' }],
    [{ do: 'move', dough, to: 'set_aside' }],
    [{ do: 'move', dough, to: 'not_baked' }],
    [
      { do: 'note', dough },
      { do: 'move', dough, to: 'set_aside' },
    ],
    [
      { do: 'undo', dough, after: 5 },
      { do: 'move', dough, to: 'lost' },
    ],
    [
      { do: 'undo', dough, after: 5 },
      { do: 'read', dough, ...at, repeat: 3, value: best },
      { do: 'file', dough, piece, values: [liked, liked] },
    ],
    [{ do: 'undo', dough, after: 11 }],
    [
      { do: 'find', dough },
      { do: 'sign', dough, by: 'self' },
      { do: 'sign', dough, by: 'second' },
      { do: 'undo', dough, after: 5 },
    ],
    [{ do: 'find', dough }],
    [{ do: 'count', dough, made: made.loaves.length - 1 }],
    [
      { do: 'begin', dough },
      { do: 'move', dough, to: 'baked' },
    ],
  ]
}

/** What they may think of who would rather have another dough, or this one out of its kind by what was weighed. */
function mendings(floor: Floor, dough: string): Move[][] {
  const { off, right, leftOut } = falsely(floor, dough)
  const { day } = floor.dough(dough)
  const setAside: Move[] = [
    { do: 'find', dough },
    { do: 'sign', dough, by: 'second' },
  ]
  return [
    [{ do: 'weigh', dough, lines: off }],
    [{ do: 'weigh', dough, lines: right }],
    [{ do: 'weigh', dough, lines: leftOut }],
    [...setAside, { do: 'again', dough }],
    [...setAside, { do: 'day', day }],
    [...setAside, { do: 'wait', ms: dayMs }, { do: 'again', dough }],
    [{ do: 'again', dough }],
    [{ do: 'day', day }],
  ]
}
