import fc from 'fast-check'
import { expect, it } from 'vitest'
import type { Json } from '@/lib/documents/canonical-text'
import { textAroundPlace } from '@/lib/documents/audit-entry/text-around-place'
import { textOfAuditEntry } from '@/lib/documents/audit-entry/text-of-audit-entry'

const place = '"number":"1","previous":"' + '0'.repeat(64) + '"'

it('with its place put in it is the text of the entry, whatever stands in it', () => {
  fc.assert(
    fc.property(
      fc.record({
        action: fc.constantFrom('people.invite-person', place),
        address: fc.oneof(fc.string(), fc.constant(place)),
        target: fc.option(fc.uuid()),
        before: fc.jsonValue() as fc.Arbitrary<Json>,
        after: fc.oneof(fc.jsonValue() as fc.Arbitrary<Json>, fc.constant({ number: '1', previous: '0'.repeat(64) })),
        reason: fc.option(fc.oneof(fc.string({ unit: 'grapheme' }), fc.constant(place))),
      }),
      fc.bigInt({ min: 1n, max: 10n ** 18n }),
      fc.stringMatching(/^[0-9a-f]{64}$/),
      (said, number, previous) => {
        const entry = { bakery: 'b', at: '2026-03-02T04:00:00.000Z', who: null, ...said }
        const { before, after } = textAroundPlace(entry)
        expect(`${before}"number":"${number}","previous":"${previous}"${after}`).toBe(
          textOfAuditEntry({ ...entry, number: String(number), previous }).text,
        )
      },
    ),
    { seed: 31 },
  )
})
