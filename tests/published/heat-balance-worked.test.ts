import { publishedCheck } from '@/tests/support/published-check'
import { tellWater } from '@/lib/kitchen/water/tell-water.input'
import { answerOf } from '@/tests/support/answer-of'

const source = 'Heat balance worked by hand: m · c · ΔT of what cools is m · c · ΔT of what warms'
const status = 'arithmetic'
const third = { tolerance: { absolute: 5e-4 }, why: 'half of the third decimal' } as const
const half = { tolerance: { absolute: 5e-3 }, why: 'half of the second decimal' } as const

const taps = {
  waterMassG: 956,
  wantedTempC: 30,
  coldTempC: 12,
  hotTempC: 55,
  mostTempC: 60,
  iceTempC: 0,
  convention: 'replacing',
  mostIceShare: 0.5,
} as const
const bySource = (changed: object, field: string) =>
  Number(answerOf('temperature/water-source', { ...taps, ...changed })[field])

for (const [field, expected] of [
  ['hotMassG', 400.19],
  ['coldMassG', 555.81],
] as const)
  publishedCheck({
    id: 'Q-6.1',
    of: ['temperature/water-source'],
    what: `956 g at 30 °C from 12 and 55 °C, ${field}`,
    source,
    status,
    expected,
    got: () => bySource({}, field),
    ...half,
  })

publishedCheck({
  id: 'Q-6.1',
  of: ['temperature/water-source'],
  what: '812 g at 12 °C and 144 g at 55 °C mix to 18.477 °C: hot water asked for that',
  source,
  status,
  expected: 144,
  got: () => bySource({ wantedTempC: 18.477 }, 'hotMassG'),
  tolerance: { absolute: 0.012 },
  why: 'half of the third decimal of the temperature, times 956 g over 43 °C',
})
publishedCheck({
  id: 'Q-6.2',
  of: ['temperature/water-source'],
  what: 'wanted 68 °C, hot tap held to 60 °C',
  source,
  status,
  expected: 'hotter-than-allowed',
  got: () => String(answerOf('temperature/water-source', { ...taps, wantedTempC: 68, hotTempC: 70 }).reason),
})
publishedCheck({
  id: 'Q-6.2',
  of: ['temperature/water-source'],
  what: 'the nearest is all at 60 °C',
  source,
  status,
  expected: 60,
  got: () => bySource({ wantedTempC: 68, hotTempC: 70 }, 'reachableTempC'),
  tolerance: 1e-12,
  why: 'exact',
})
for (const [latentHeatJPerG, expected] of [
  [80 * 4.186, 41.565],
  [334, 41.66],
] as const)
  publishedCheck({
    id: 'Q-6.2',
    of: ['temperature/water-source'],
    what: `wanted 8 °C, tap 12 °C: ice in place of water, melting with ${latentHeatJPerG} J/g`,
    source,
    status,
    expected,
    got: () => bySource({ wantedTempC: 8, latentHeatJPerG, waterSpecificHeatJPerGK: 4.186 }, 'iceMassG'),
    ...third,
  })

const added = {
  waterMassG: 8000,
  tapTempC: 20,
  iceTempC: 0,
  latentHeatJPerG: 80 * 4.186,
  waterSpecificHeatJPerGK: 4.186,
}
publishedCheck({
  id: 'Q-6.3',
  of: ['temperature/ice-mass'],
  what: 'most ice that 8 kg of water at 20 °C melts: what brings it to 0 °C',
  source,
  status,
  expected: 2000,
  got: () => Number(answerOf('temperature/ice-mass', { ...added, wantedTempC: 0, convention: 'adding' }).iceMassG),
  tolerance: 1e-9,
  why: 'exact arithmetic',
})
const refusalOf = (work: () => unknown) => {
  try {
    work()
    return 'answered'
  } catch (error) {
    return /"max":2000,?.*"reason":"never-melts"/.test(String(error)) ? 'never melts, at most 2000 g' : String(error)
  }
}
publishedCheck({
  id: 'Q-6.3',
  of: ['temperature/iced-water-temp'],
  what: '19 kg of ice into 8 kg of water at 20 °C',
  source,
  status,
  expected: 'never melts, at most 2000 g',
  got: () => refusalOf(() => answerOf('temperature/iced-water-temp', { ...added, iceMassG: 19_000 })),
})
publishedCheck({
  id: 'Q-6.3',
  of: ['temperature/ice-mass'],
  what: 'ice added to 8 kg of water at 20 °C for water of −50 °C, 18.7 kg by the bare rule',
  source,
  status,
  expected: 'never melts, at most 2000 g',
  got: () => refusalOf(() => answerOf('temperature/ice-mass', { ...added, wantedTempC: -50, convention: 'adding' })),
})

publishedCheck({
  id: 'Q-6.5',
  of: ['temperature/required-water-temp'],
  what: 'water for 25 °C: 10 kg of flour at 21 °C with 1.8 J/(g·K), 6.2 kg of water, 60 kJ of friction',
  source: `${source}; flour at 1.8: common practice, no source`,
  status,
  expected: 25.462,
  got: () =>
    Number(
      answerOf('temperature/required-water-temp', {
        doughTempC: 25,
        parts: [{ massG: 10_000, tempC: 21, specificHeatJPerGK: 1.8 }],
        waterMassG: 6200,
        roomHeatJ: 0,
        frictionBy: 'energy',
        phases: [{ joulePerKgMin: 60_000 / 16.2, minutes: 1 }],
      }).waterTempC,
    ),
  ...third,
})

const doughTold = tellWater(
  {
    outcome: 'known',
    targetC: 26,
    tapTempC: null,
    mixMin: 10,
    heat: { waterJPerK: 380 * 4.186, flourJPerK: 600 * 1.8, restJPerK: 20 * 0.86 },
    isGuess: false,
    mixer: { key: 'mixer', name: null },
    // 6 K in 380 · 4.186 + 600 · 1.8 + 20 · 0.86 J/K.
    friction: { jPerKg: 16_127.28, by: 'learned', doughs: 5, isGuess: false },
    first: null,
  },
  { flourC: 20, roomC: 22 },
  null,
)
publishedCheck({
  id: 'Q-6.9',
  of: ['temperature/required-water-temp'],
  what: 'the water told before mixing: a dough at 26 °C of flour at 20, room 22, and 6 °C by mixing',
  source,
  status,
  expected: 19.978,
  got: () => (doughTold.outcome === 'told' ? doughTold.waterTempC : Number.NaN),
  ...third,
})
