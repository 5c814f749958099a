import { comparePh } from '@/lib/calc/acidity/compare-ph'
import { titratableAcidity } from '@/lib/calc/acidity/titratable-acidity'
import { waterPhaseSalt } from '@/lib/calc/acidity/water-phase-salt'
import { publishedCheck } from '@/tests/support/published-check'

const source = 'definitions of pH, titratable acidity and water-phase salt'
publishedCheck({
  of: ['acidity/titratable-acidity'],
  what: '1 mL of 0.1 mol/L neutralises 0.009008 g of lactic acid: 10 mL on 10 g, %',
  source,
  status: 'from memory',
  expected: 0.9008,
  got: () => titratableAcidity({ sampleMassG: 10, alkaliMl: 10, alkaliMolPerL: 0.1, endPointPh: 8.5 }).lacticAcidPct,
  tolerance: { relative: 1e-9 },
  why: 'exact arithmetic on the factor',
})
publishedCheck({
  of: ['acidity/titratable-acidity'],
  what: '20 g and 15 mL of 0.1 mol/L, mL for 10 g',
  source,
  status: 'common practice, no source',
  expected: 7.5,
  got: () => titratableAcidity({ sampleMassG: 20, alkaliMl: 15, alkaliMolPerL: 0.1, endPointPh: 8.5 }).acidityMlPer10g,
  tolerance: { relative: 1e-12 },
  why: 'the definition itself',
})
publishedCheck({
  of: ['acidity/compare-ph'],
  what: 'one pH lower has ten times the hydrogen ions',
  source,
  status: 'from memory',
  expected: 10,
  got: () => comparePh({ controlPh: 5.2, armPh: 4.2 }).timesAsAcid,
  tolerance: { relative: 1e-12 },
  why: 'the definition itself',
})
publishedCheck({
  of: ['acidity/compare-ph'],
  what: '0.30103 lower has twice as many (log 2)',
  source,
  status: 'from memory',
  expected: 2,
  got: () => comparePh({ controlPh: 4.9, armPh: 4.9 - 0.30103 }).timesAsAcid,
  tolerance: { relative: 1e-6 },
  why: 'the logarithm is given to five decimals',
})
publishedCheck({
  of: ['acidity/water-phase-salt'],
  what: '3.5 % salt beside 66.5 % water',
  source,
  status: 'from memory',
  expected: 5,
  got: () => waterPhaseSalt({ saltMassG: 3.5, waterMassG: 66.5 }).waterPhaseSaltPct,
  tolerance: { relative: 1e-12 },
  why: 'the definition, worked by hand',
})
