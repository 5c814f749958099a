import fc from 'fast-check'
import { expect, it } from 'vitest'
import { badgeText, readBadge } from '@/lib/kitchen/badge-text.input'

const secrets = fc.stringMatching(/^\d{39}$/)

it('reads what stands on a badge, whatever the scanner puts around it', () => {
  fc.assert(
    fc.property(secrets, (secret) => {
      expect(readBadge(badgeText(secret))).toBe(secret)
      expect(readBadge(`\t${badgeText(secret).toLowerCase()}\r\n`)).toBe(secret)
    }),
  )
})

it('takes nothing else for a badge', () => {
  const [text] = [badgeText('7'.repeat(39))]
  for (const other of ['', '307', '7'.repeat(39), text.slice(0, -1), `${text}7`, `${text} ${text}`, `x${text}`])
    expect(readBadge(other)).toBeNull()
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (other) => {
      expect(readBadge(other)).toBeNull()
    }),
  )
})
