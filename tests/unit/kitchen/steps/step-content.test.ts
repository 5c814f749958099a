import fc from 'fast-check'
import { expect, it } from 'vitest'
import { canonicalText } from '@/lib/documents/canonical-text'
import { hashOfText } from '@/lib/documents/hash-of-text'
import { readStep } from '@/lib/documents/step/read-step'
import { textOfStep } from '@/lib/documents/step/text-of-step.input'
import { stepKinds } from '@/lib/kitchen/steps/step-kinds.input'

const text = fc.option(fc.string({ unit: 'grapheme' }))
const tempC = fc.option(fc.double({ min: -40, max: 500, noNaN: true }))
const content = fc.record({
  agoS: fc.nat(),
  batch: fc.uuid(),
  beside: text,
  chamberTempC: tempC,
  clockAheadS: fc.option(fc.integer()),
  isDone: fc.boolean(),
  place: text,
  readTempC: tempC,
  reason: text,
  setTempC: tempC,
  setting: text,
  steam: fc.option(fc.boolean()),
  step: fc.constantFrom(...stepKinds),
  supersedes: fc.option(fc.uuid()),
  takenAt: fc.constant('2026-03-01T05:20:00.000+01:00'),
})

it('the text of a step is canonical, is read back as what was entered, and gives its text again', () => {
  fc.assert(
    fc.property(content, (entered) => {
      const written = textOfStep(entered)
      expect(canonicalText(JSON.parse(written))).toBe(written)
      const read = readStep(written, hashOfText(written))
      expect(read.outcome).toBe('read')
      if (read.outcome === 'read') expect(textOfStep(read.value)).toBe(written)
    }),
    { seed: 77 },
  )
})
