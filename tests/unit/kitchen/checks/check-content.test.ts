import fc from 'fast-check'
import { expect, it } from 'vitest'
import { canonicalText } from '@/lib/documents/canonical-text'
import { readCheck } from '@/lib/documents/check/read-check'
import { textOfCheck, type CheckContent } from '@/lib/documents/check/text-of-check.input'
import { hashOfText } from '@/lib/documents/hash-of-text'

const text = fc.string({ unit: 'grapheme' })
const content = fc.record<CheckContent>(
  {
    block: text,
    clockAheadS: fc.option(fc.integer()),
    equipment: fc.uuid(),
    mass: fc.option(text),
    shown: text,
    takenAt: fc.constant('2026-03-01T05:20:00.000+01:00'),
    unit: text,
  },
  { requiredKeys: ['clockAheadS', 'equipment', 'mass', 'shown', 'takenAt', 'unit'] },
)

it('the text of a check is canonical, is read back as what was entered, and gives its text again', () => {
  fc.assert(
    fc.property(content, (entered) => {
      const written = textOfCheck(entered)
      expect(canonicalText(JSON.parse(written))).toBe(written)
      const read = readCheck(written, hashOfText(written))
      const format = entered.block === undefined ? 1 : 2
      expect(read).toEqual({ outcome: 'read', format, value: { ...entered, format } })
      if (read.outcome === 'read') expect(textOfCheck(read.value)).toBe(written)
    }),
    { seed: 79 },
  )
})
