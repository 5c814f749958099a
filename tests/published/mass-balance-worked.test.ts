import { maltToFallingNumber } from '@/lib/calc/flour/malt-to-falling-number'
import { blendToFigure } from '@/lib/calc/flour/blend-to-figure'
import { countPieces } from '@/lib/calc/loaf/count-pieces'
import { levain } from '@/lib/calc/preferment/levain'
import { preFerment } from '@/lib/calc/preferment/pre-ferment'
import { scald } from '@/lib/calc/preferment/scald'
import type { CalcId } from '@/lib/calc/catalogue'
import { publishedCheck } from '@/tests/support/published-check'

/** Figures made up, answers worked by hand from what goes in and what comes out. */
function worked(id: string, of: CalcId, what: string, expected: number, got: () => number): void {
  publishedCheck({
    id,
    of: [of],
    what,
    source: 'mass balance, worked by hand',
    status: 'arithmetic',
    expected,
    got,
    tolerance: { relative: 2e-5 },
    why: 'worked out to five digits or more',
  })
}

const stiff = () =>
  levain({
    levainMassG: 360,
    levainHydrationPct: 100,
    starterHydrationPct: 50,
    starterBy: 'fresh-flour',
    starterPct: 20,
  })
worked(
  'Q-1.4',
  'preferment/levain',
  '360 g at 100 % from a starter of 50 %: fresh flour',
  158.824,
  () => stiff().freshFlourG,
)
worked('Q-1.4', 'preferment/levain', 'the same: water', 169.412, () => stiff().freshWaterG)
worked('Q-1.4', 'preferment/levain', 'the same: starter', 31.765, () => stiff().starterG)

const poolish = () =>
  preFerment({ flourMassG: 5000, doughHydrationPct: 68, preFermentedPct: 15, preFermentHydrationPct: 100 })
const biga = () =>
  preFerment({ flourMassG: 5000, doughHydrationPct: 68, preFermentedPct: 30, preFermentHydrationPct: 55 })
worked(
  'Q-1.7',
  'preferment/pre-ferment',
  '15 % of 5000 g in a poolish: water of it',
  750,
  () => poolish().preFermentWaterG,
)
worked('Q-1.7', 'preferment/pre-ferment', 'the same: flour left', 4250, () => poolish().doughFlourG)
worked('Q-1.7', 'preferment/pre-ferment', 'the same: water left', 2650, () => poolish().doughWaterG)
worked(
  'Q-1.7',
  'preferment/pre-ferment',
  '30 % of it in a biga of 55 %: water of it',
  825,
  () => biga().preFermentWaterG,
)
worked('Q-1.7', 'preferment/pre-ferment', 'the same: water left', 2575, () => biga().doughWaterG)

const rye = () =>
  scald({
    flourMassG: 2000,
    doughHydrationPct: 75,
    scaldedPct: 10,
    scaldHydrationPct: 250,
    by: 'weighed',
    scaldWeighedG: 655,
  })
worked('Q-1.8', 'preferment/scald', 'scald of 200 + 500 g that weighs 655 g: gone', 45, () => rye().evaporatedG)
worked('Q-1.8', 'preferment/scald', 'water to add to 2000 g of flour at 75 %', 1045, () => rye().doughWaterG)
worked('Q-1.8', 'preferment/scald', 'points too dry without weighing', 2.25, () => rye().tooDryPctFlour)

worked(
  'Q-3.4',
  'flour/malt-to-falling-number',
  '350 s, 290 with 0.1 %, wanted 250: % malt',
  0.2,
  () =>
    maltToFallingNumber({
      fallingNumberS: 350,
      triedDosePctFlour: 0.1,
      triedFallingNumberS: 290,
      wantedFallingNumberS: 250,
    }).dosePctFlour,
)

const two = {
  firstPct: 13.2,
  secondPct: 10.4,
  firstMoisturePct: 12.8,
  secondMoisturePct: 14.6,
  wantedPct: 12,
  massG: 100_000,
}
const at14 = () => blendToFigure({ ...two, basis: 'moisture', basisMoisturePct: 14 })
worked(
  'Q-3.6',
  'flour/blend-to-figure',
  '13.2 % at 12.8 % moisture, restated at 14 %',
  13.0183,
  () => at14().firstAtBasisPct,
)
worked(
  'Q-3.6',
  'flour/blend-to-figure',
  '10.4 % at 14.6 % moisture, restated at 14 %',
  10.4731,
  () => at14().secondAtBasisPct,
)
worked('Q-3.6', 'flour/blend-to-figure', 'part of the first to 12.0 %', 59.991, () => at14().firstPartPct)
worked(
  'Q-3.6',
  'flour/blend-to-figure',
  'first flour as weighed for 100 kg at 14 %, g',
  59_165,
  () => at14().firstMassG,
)
worked('Q-3.6', 'flour/blend-to-figure', 'second flour as weighed, g', 40_290, () => at14().secondMassG)
worked(
  'Q-3.6',
  'flour/blend-to-figure',
  'part of the first when moisture is ignored',
  57.143,
  () => blendToFigure({ ...two, basis: 'as-is' }).firstPartPct,
)

const pieces = () => countPieces({ planned: 160, scaled: 158, spoilt: 3, sampled: 2, sold: 148 })
worked(
  'Q-7.5',
  'loaf/count-pieces',
  '160 planned, 158 scaled, 3 spoilt, 2 sampled, 148 sold: good',
  155,
  () => pieces().good,
)
worked('Q-7.5', 'loaf/count-pieces', 'the same: good in % of planned', 96.875, () => pieces().goodPct)
worked('Q-7.5', 'loaf/count-pieces', 'the same: wasted', 5, () => pieces().wasted)
worked('Q-7.5', 'loaf/count-pieces', 'the same: sold in % of good', 95.484, () => pieces().soldPct)
