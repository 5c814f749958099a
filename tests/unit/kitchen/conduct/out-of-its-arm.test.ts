import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { LineFound } from '@/lib/kitchen/conduct/line-off-target.input'
import { outOfItsArm } from '@/lib/kitchen/conduct/out-of-its-arm'

type Line = { isDose: boolean; found: LineFound }
const line = fc.record<Line>({
  isDose: fc.boolean(),
  found: fc.constantFrom<LineFound>('on-target', 'off', 'left-out'),
})

describe('a dough is out of its arm', () => {
  it('by a dose that is off, or by any line that was left out', () => {
    expect(outOfItsArm([{ isDose: true, found: 'off' }])).toBe(true)
    expect(outOfItsArm([{ isDose: true, found: 'left-out' }])).toBe(true)
    expect(outOfItsArm([{ isDose: false, found: 'left-out' }])).toBe(true)
  })

  it('never by another line that is off, however many there are, nor where nothing was written', () => {
    expect(outOfItsArm([])).toBe(false)
    fc.assert(
      fc.property(fc.array(line), (lines) => {
        const others = lines.map(
          ({ found }): Line => ({
            isDose: false,
            found: found === 'on-target' ? found : 'off',
          }),
        )
        expect(outOfItsArm(others)).toBe(false)
      }),
    )
  })

  it('and not brought back by any further line', () => {
    fc.assert(
      fc.property(fc.array(line), fc.array(line), (lines, more) => {
        if (outOfItsArm(lines)) expect(outOfItsArm([...lines, ...more])).toBe(true)
      }),
    )
  })
})
