import fc from 'fast-check'
import { expect, it } from 'vitest'
import { canonicalText } from '@/lib/documents/canonical-text'
import { readCheck } from '@/lib/documents/check/read-check'
import { textOfCheck } from '@/lib/documents/check/text-of-check.input'
import { hashOfText } from '@/lib/documents/hash-of-text'

const text = fc.string({ unit: 'grapheme' })
const content = fc.record({
  clockAheadS: fc.option(fc.integer()),
  equipment: fc.uuid(),
  mass: fc.option(text),
  shown: text,
  takenAt: fc.constant('2026-03-01T05:20:00.000+01:00'),
  unit: text,
})

it('the text of a check is canonical, is read back as what was entered, and gives its text again', () => {
  fc.assert(
    fc.property(content, (entered) => {
      const written = textOfCheck(entered)
      expect(canonicalText(JSON.parse(written))).toBe(written)
      const read = readCheck(written, hashOfText(written))
      expect(read.outcome).toBe('read')
      if (read.outcome === 'read') expect(textOfCheck(read.value)).toBe(written)
    }),
    { seed: 79 },
  )
})
