import { describe, expect, it } from 'vitest'
import type { KnownWater, WaterFacts } from '@/lib/kitchen/water/tell-water.input'
import type { FloorMeasure } from '@/lib/station/keep/facts'
import { waterOfDough } from '@/lib/station/outbox/water-of-dough'
import { sayNoWater, sayWater } from '@/lib/station/ui/say-water'
import { wordsIn } from '@/lib/words/words'

const facts: KnownWater = {
  outcome: 'known',
  targetC: 26,
  tapTempC: 12,
  mixMin: 10,
  heat: { waterJPerK: 380 * 4.186, flourJPerK: 600 * 1.8, restJPerK: 20 * 0.86 },
  isGuess: false,
  mixer: { key: 'spiral', name: 'Spiral' },
  friction: { jPerKg: 16_127, by: 'learned', doughs: 5, isGuess: false },
  first: null,
}
const began = Date.UTC(2026, 2, 2, 4)
const at = (hours: number) => new Date(began + hours * 3_600_000).toISOString()
const measure = (code: string, value: number | null): FloorMeasure => ({
  id: code,
  code,
  name: code,
  unit: '°C',
  digits: 1,
  least: 0,
  most: 60,
  level: 'batch',
  byDisplacement: false,
  isWanted: false,
  repeats: 1,
  repeatLimit: null,
  toBase: { times: 1, plus: 0 },
  ageLeastH: null,
  ageMostH: null,
  places: [
    {
      piece: null,
      factorLevel: null,
      repeat: 1,
      reading:
        value === null
          ? null
          : {
              id: code,
              value: `${value}`,
              unit: '°C',
              inBase: value,
              at: at(1),
              receivedAt: at(1),
              who: 'Esi',
              personId: 'esi',
            },
    },
  ],
})
const dough = (
  code: string,
  begunAt: string | null,
  [flourC, roomC, waterC, doughC]: (number | null)[],
  water: WaterFacts | null = facts,
) => ({
  id: code,
  code,
  begunAt,
  water,
  measures: [
    measure('flour-temp', flourC ?? null),
    measure('room-temp', roomC ?? null),
    measure('water-temp', waterC ?? null),
    measure('dough-temp', doughC ?? null),
  ],
})
const mine = dough('QX7', at(2), [20, 22, null, null])
const correctedBy = (others: ReturnType<typeof dough>[], of = mine) => {
  const found = waterOfDough(of, [of, ...others], [], began)
  return found?.told.outcome === 'told' ? found.told.correctedBy : undefined
}

describe('the water of a dough on a tablet', () => {
  const whole = [20, 22, 14, 27]

  it('is corrected by the first dough of the day on the same mixer, and by nothing else', () => {
    expect(correctedBy([])).toBeNull()
    expect(correctedBy([dough('RT2', at(1), whole), dough('LK4', at(0), whole)])).toBe('LK4')
    expect(correctedBy([dough('RT2', at(-1), whole)])).toBeNull()
    expect(correctedBy([dough('RT2', null, whole)])).toBeNull()
    expect(correctedBy([dough('RT2', at(1), [20, 22, null, 27])])).toBeNull()
    const elsewhere = { ...facts, mixer: { key: 'fork', name: 'Fork' } }
    expect(correctedBy([dough('RT2', at(1), whole, elsewhere)])).toBeNull()
    expect(correctedBy([dough('RT2', at(1), whole, { outcome: 'waters-differ' })])).toBeNull()
    expect(correctedBy([dough('RT2', at(1), whole, null)])).toBeNull()
  })

  it('knows of a first dough that has left the floor by the book, on that day alone', () => {
    const first = { id: 'gone', code: 'GN1', begunAtMs: began, jPerKgMin: 1_800 }
    expect(correctedBy([], { ...mine, water: { ...facts, first } })).toBe('GN1')
    const yesterday = { ...first, begunAtMs: began - 1 }
    expect(correctedBy([], { ...mine, water: { ...facts, first: yesterday } })).toBeNull()
    // What stands on the floor of it is newer than what the book named.
    const again = { ...first, id: 'RT2', code: 'RT2' }
    expect(
      correctedBy([dough('RT2', at(1), [20, 22, 14, null])], { ...mine, water: { ...facts, first: again } }),
    ).toBeNull()
  })

  it('is none where the book tells none, or is older than that', () => {
    expect(waterOfDough({ ...mine, water: null }, [], [], began)).toBeNull()
    expect(waterOfDough({ ...mine, water: { outcome: 'waters-differ' } }, [], [], began)).toBeNull()
  })
})

describe('what is said of it', () => {
  const words = wordsIn('en').stationWater
  const said = (change: Partial<KnownWater> = {}, unit: '°C' | '°F' = '°C', temps = { flourC: 20, roomC: 22 }) => {
    const of = { ...mine, water: { ...facts, ...change } }
    const found = waterOfDough(of, [], [], began)!
    const { headline, minded, behind } = sayWater(found.told, found.facts, temps, {
      unit,
      locale: 'en-GB',
      words,
      language: 'en',
    })
    const plain = (text: string) => text.replaceAll('\u00a0', ' ')
    return { headline: headline && plain(headline), minded: minded.map(plain), behind: behind.map(plain) }
  }

  it('is the water, and behind it what it comes from, in the degrees of the bakery', () => {
    expect(said()).toEqual({
      headline: 'Water: 20 °C',
      minded: ['Hot water scalds: draw it low and slowly, and keep your hands off.'],
      behind: [
        'For a dough of 26 °C, as planned: flour 20 °C, room 22 °C, and 6 °C by mixing.',
        'How much mixing warms it is learned from 5 doughs of Spiral.',
      ],
    })
    expect(said({}, '°F')).toMatchObject({ headline: 'Water: 68 °F' })
    // A difference takes no 32.
    expect(said({}, '°F').behind[0]).toContain('10.8 °F by mixing')
  })

  it('is where the friction is from, and that it is a guess where it is', () => {
    const { friction, mixer } = facts
    expect(said({ mixer: { ...mixer, name: null } }).behind[1]).toContain('its plan names no mixer')
    expect(said({ friction: { ...friction, by: 'mixer', doughs: 0 } }).behind[1]).toContain(
      'under Equipment for Spiral',
    )
    expect(said({ friction: { ...friction, by: 'usual', isGuess: true } }).behind[1]).toContain('a usual figure')
    expect(said({ friction: { ...friction, isGuess: true } }).behind[2]).toMatch(/^A guess: those doughs/)
    expect(said({ isGuess: true }).behind[2]).toMatch(/^A guess: of some/)
  })

  it('names ice, colder flour or warmer flour where there is no such water, and no number to draw', () => {
    const friction = (jPerKg: number) => ({ friction: { ...facts.friction, jPerKg } })
    const iced = said(friction(55_000))
    expect(iced.headline).toBeNull()
    expect(iced.minded[0]).toMatch(/^No water is that cold: use melting ice for \d+ % of it/)
    expect(said({ ...friction(55_000), tapTempC: null }).minded[0]).toContain('tells the calculator')
    expect(said(friction(160_000))).toMatchObject({ headline: null })
    expect(said(friction(160_000)).minded[0]).toContain('Cool the flour or the room first.')
    expect(said({ ...friction(0), targetC: 40 }).minded[0]).toContain('Warm the flour or the room first.')
    expect(said(friction(55_000)).minded.at(-1)).toContain('is hardly so')
    expect(said(friction(30_000)).minded[0]).toMatch(/^From a tap of 12 °C, \d+ % of it is melting ice/)
  })

  it('is a reason where none is told', () => {
    for (const outcome of ['no-plain-water', 'waters-differ', 'friction-too-high'] as const)
      expect(sayNoWater(outcome, words).length).toBeGreaterThan(20)
  })
})
