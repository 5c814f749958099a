import { usAllowableVariationG } from '@/lib/calc/net-weight/us-allowable-variation'
import { usCheckScale } from '@/lib/calc/net-weight/us-check-scale'
import { usLotCheck } from '@/lib/calc/net-weight/us-lot-check'
import { usSamplingPlan } from '@/lib/calc/net-weight/us-sampling-plan'
import { publishedCheck } from '@/tests/support/published-check'

const G_PER_LB = 453.59237

for (const [labelledG, expected] of [
  [340, 16.3],
  [400, 18.1],
  [454, 19.9],
  [500, 21.7],
  [600, 23.5],
  [680, 25.4],
  [750, 27.2],
  [800, 29],
  [907, 31.7],
  [113, 7.2],
  [250, 12.7],
  [300, 14.5],
  [1000, 35.3],
  [1500, 49],
] as const) {
  publishedCheck({
    id: 'P-10.5',
    of: ['net-weight/us-allowable-variation'],
    what: `${labelledG} g on the label: maximum allowable variation, g`,
    source: 'NIST Handbook 133, table 2-5',
    status: labelledG === 113 || labelledG === 907 ? 'published in chapter 2, 2026' : 'from memory',
    expected,
    got: () => usAllowableVariationG({ labelledG }).variationG,
    tolerance: { relative: 1e-12 },
    why: 'the table itself',
  })
}
publishedCheck({
  id: 'P-10.5',
  of: ['net-weight/us-allowable-variation'],
  what: 'one pound: 0.044 lb',
  source: 'NIST Handbook 133, table 2-5, in pounds',
  status: 'from memory',
  expected: 0.044 * G_PER_LB,
  got: () => usAllowableVariationG({ labelledG: G_PER_LB }).variationG,
  tolerance: { absolute: 0.1 },
  why: 'the table in grams is rounded to a tenth, the one in pounds to 0.002 lb',
})

const chapter2 = 'NIST Handbook 133 (2026), chapter 2'
for (const [lotPackages, packages, printed, worked, allowed] of [
  [12, 12, 0.635, 0.63537, 0],
  [250, 12, 0.635, 0.63537, 0],
  [251, 24, 0.422, 0.42226, 0],
  [3200, 24, 0.422, 0.42226, 0],
  [3201, 48, 0.291, 0.29037, 1],
] as const) {
  const plan = () => usSamplingPlan({ lotPackages })
  const shared = { id: 'Q-9.7', of: ['net-weight/us-sampling-plan'] } as const
  publishedCheck({
    ...shared,
    what: `lot of ${lotPackages}: packages weighed`,
    source: 'NIST Handbook 133, table 2-1',
    status: 'from memory',
    expected: packages,
    got: () => plan().samplePackages,
    tolerance: { absolute: 0 },
    why: 'a count',
  })
  publishedCheck({
    ...shared,
    what: `lot of ${lotPackages}: may be shorter than allowed`,
    source: 'NIST Handbook 133, table 2-1',
    status: 'from memory',
    expected: allowed,
    got: () => plan().shortAllowed,
    tolerance: { absolute: 0 },
    why: 'a count',
  })
  publishedCheck({
    ...shared,
    what: `lot of ${lotPackages}: printed factor`,
    source: 'NIST Handbook 133, table 2-1',
    status: 'from memory',
    expected: printed,
    got: () => plan().factor,
    tolerance: { absolute: 1e-3 },
    why: 'the table has three decimals; its 0.291 is 0.2904 worked',
  })
  publishedCheck({
    ...shared,
    what: `lot of ${lotPackages}: t₀.₉₇₅(${packages - 1})/√${packages}`,
    source: chapter2,
    status: 'published rule, factor worked from a table of t',
    expected: worked,
    got: () => plan().factor,
    tolerance: { absolute: 5e-6 },
    why: 'half of the fifth decimal',
  })
}

const loaves = {
  lotPackages: 200,
  labelledG: G_PER_LB,
  product: 'bread',
  contentsG: [452.1, 455.0, 449.8, 453.2, 451.0, 454.4, 450.6, 452.9, 453.8, 448.9, 452.0, 451.7],
} as const
for (const [what, expected, part] of [
  ['mean less the label, g', -1.4757, 'meanErrorG'],
  ['spread, g', 1.8488, 'sdG'],
  // The spread times the table's 0.635 is 1.1740; by the exact factor it is 1.1747.
  ['sample error limit by the exact factor, g', 1.8488 * 0.63537, 'errorLimitG'],
  ['packages short by more than 19.9 g', 0, 'shortPackages'],
] as const) {
  publishedCheck({
    id: 'Q-9.8',
    of: ['net-weight/us-lot-check'],
    what: `12 loaves of 1 lb: ${what}`,
    source: chapter2,
    status: 'published rule, loaves invented, worked by hand',
    expected,
    got: () => usLotCheck(loaves)[part],
    tolerance: { absolute: 5e-5 },
    why: 'half of the fourth decimal',
  })
}
publishedCheck({
  id: 'Q-9.8',
  of: ['net-weight/us-lot-check'],
  what: '12 loaves of 1 lb: short by more than the sample error limit',
  source: chapter2,
  status: 'published rule, loaves invented, worked by hand',
  expected: 'fails',
  got: () => (usLotCheck(loaves).isLotAccepted ? 'passes' : 'fails'),
})

const flour = {
  lotPackages: 200,
  labelledG: 907,
  product: 'flour',
  contentsG: new Array<number>(12).fill(890),
} as const
for (const [what, expected, got, tolerance] of [
  ['allowed for drying out, g', 27, () => usLotCheck(flour).dryingAllowanceG, 0.5],
  ['a single package may be short by, g', 58.7, () => usLotCheck(flour).shortageLimitG, 0.5],
] as const) {
  publishedCheck({
    id: 'Q-9.9',
    of: ['net-weight/us-lot-check'],
    what: `flour of 907 g: ${what}`,
    source: `${chapter2}, table 2-3`,
    status: 'published',
    expected,
    got,
    tolerance: { absolute: tolerance },
    why: 'the handbook takes 3 % as 27 g, a whole gram',
  })
}
for (const [what, contentG, expected] of [
  ['short by 17 g each, without any spread: within the allowance', 890, 'passes'],
  ['short by 28 g each, without any spread: beyond it', 879, 'fails'],
] as const) {
  publishedCheck({
    id: 'Q-9.9',
    of: ['net-weight/us-lot-check'],
    what: `flour of 907 g, ${what}`,
    source: `${chapter2}, table 2-3`,
    status: 'published rule, packages invented',
    expected,
    got: () =>
      usLotCheck({ ...flour, contentsG: new Array<number>(12).fill(contentG) }).isLotAccepted ? 'passes' : 'fails',
  })
}
for (const [labelledG, sixth, usual, status] of [
  [113, 1.2, 1, 'published'],
  [G_PER_LB, 3.3, 2, 'published rule, worked'],
] as const) {
  const scale = (divisionG: number) => usCheckScale({ labelledG, divisionG, capacityG: 3000 })
  publishedCheck({
    id: 'Q-9.9',
    of: ['net-weight/us-check-scale'],
    what: `${labelledG} g: a sixth of the allowed variation, g`,
    source: chapter2,
    status,
    expected: sixth,
    got: () => scale(usual).largestDivisionG,
    tolerance: { absolute: 0.05 },
    why: 'given to a tenth',
  })
  publishedCheck({
    id: 'Q-9.9',
    of: ['net-weight/us-check-scale'],
    what: `${labelledG} g: so a scale with steps of, g`,
    source: chapter2,
    status,
    expected: usual,
    got: () => scale(usual).usualDivisionG,
    tolerance: { absolute: 0 },
    why: 'a usual step',
  })
}
for (const [capacityG, expected] of [
  [200, 'enough'],
  [198, 'too few'],
] as const) {
  publishedCheck({
    id: 'Q-9.9',
    of: ['net-weight/us-check-scale'],
    what: `steps of 2 g up to ${capacityG} g: at least 100 of them`,
    source: chapter2,
    status: 'published',
    expected,
    got: () => (usCheckScale({ labelledG: 150, divisionG: 2, capacityG }).hasEnoughDivisions ? 'enough' : 'too few'),
  })
}
