import { expect, it } from 'vitest'
import { readEnteredValue } from '@/lib/kitchen/readings/read-entered-value'

it.each([
  ['412.5', '412.5'],
  [' 24,5 ', '24.5'],
  ['1.234', '1.234'],
  ['1850', '1850'],
  ['-2', '-2'],
  ['\u22122.5', '-2.5'],
  ['007', '007'],
])('reads %j', (typed, number) => {
  expect(readEnteredValue(typed)).toEqual({ number })
})

it.each(['', '-', '.5', '5.', '1e3', '1 850', '12.5.1', '0x10', 'Infinity', '1,234.5', '٣'])(
  'does not read %j',
  (typed) => {
    expect(readEnteredValue(typed)).toEqual({ fault: 'not-a-number' })
  },
)

it('asks back where a comma may part thousands', () => {
  expect(readEnteredValue('1,234')).toEqual({ fault: 'ambiguous-number' })
})
