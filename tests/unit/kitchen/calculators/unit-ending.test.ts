import { expect, test } from 'vitest'
import { unitEnding } from '@/lib/kitchen/calculators/unit-ending'

test.each([
  ['massG', 'G'],
  ['massesG', 'G'],
  ['specificVolumeMlPerG', 'MlPerG'],
  ['doughTempC', 'C'],
  ['heatCapacityJPerGK', 'JPerGK'],
  ['pctFlour', 'pctFlour'],
  ['lossShares', 'Shares'],
  ['minutes', 'minutes'],
  ['Minutes', undefined],
  ['dosePctFlour', 'PctFlour'],
  ['lossPct', 'Pct'],
  ['errorShare', 'Share'],
  ['proofTimeS', 'S'],
  ['restMin', 'Min'],
  ['areaCm2', 'Cm2'],
  ['coverageFactor', undefined],
  ['df', undefined],
  ['arms', undefined],
  ['pValue', undefined],
  ['G', undefined],
])('%s is in %s', (name, ending) => {
  expect(unitEnding(name)).toBe(ending)
})

test.each([
  ['mgPerKg', 'MgPerKg'],
  ['maxMgPerKg', 'MgPerKg'],
  ['joulePerKgMin', 'JoulePerKgMin'],
  ['firstSpeedJPerKgMin', 'JPerKgMin'],
  ['share', undefined],
  ['min', undefined],
])('%s, named for nothing but its unit or not, ends in %s', (name, ending) => expect(unitEnding(name)).toBe(ending))
