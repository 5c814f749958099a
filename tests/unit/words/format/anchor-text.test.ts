import fc from 'fast-check'
import { expect, it } from 'vitest'
import { verifyRecordInput } from '@/lib/kitchen/audit/verify-record.input'
import { anchorText } from '@/lib/words/format/anchor-text'

it('is sixteen letters in groups of four, and typed back the beginning of its hash', () => {
  expect(anchorText('ab12cd34ef5607891234')).toBe('ab12 cd34 ef56 0789')
  fc.assert(
    fc.property(fc.stringMatching(/^[0-9a-f]{64}$/), (hash) => {
      const typed = { number: '7', hash: ` ${anchorText(hash).toUpperCase()}\n` }
      expect(verifyRecordInput.parse({ anchor: typed }).anchor).toEqual({ number: 7, hash: hash.slice(0, 16) })
    }),
    { seed: 16, numRuns: 100 },
  )
})
