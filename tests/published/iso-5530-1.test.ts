import { farinographAbsorption } from '@/lib/calc/formula/farinograph-absorption'
import { publishedCheck } from '@/tests/support/published-check'

publishedCheck({
  id: 'P-3.8',
  of: ['formula/farinograph-absorption'],
  what: 'absorption corrected from 520 units: 180 mL becomes 181.92 mL with 293.2 g of flour',
  source: 'ISO 5530-1, correction to 500 units',
  status: 'from memory',
  expected: 58.373,
  got: () =>
    farinographAbsorption({ bowlG: 300, flourMassG: 293.2, waterMl: 180, consistencyUnits: 520 }).absorptionPct,
  tolerance: { absolute: 5e-4 },
  why: 'half of the third decimal',
})
