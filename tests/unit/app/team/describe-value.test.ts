import { expect, it } from 'vitest'
import { describeValue } from '@/app/(desk)/team/record/describe-value'

it('says a value in one line, by the names of the record, with its hashes cut', () => {
  const hash = 'ab12cd34ef56'.padEnd(64, '0')
  expect(describeValue({ kept: [{ batch: '638', hash, value: 878 }, { batch: null }], isOdd: false })).toBe(
    'kept batch 638, hash ab12cd34ef56…, value 878; batch –, isOdd false',
  )
  expect(describeValue('ab12')).toBe('ab12')
  expect(describeValue(`${hash}0`)).toBe(`${hash}0`)
})
