import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { whyNotTakenOut } from '@/lib/kitchen/conduct/why-not-taken-out'

const at = (minute: number) => new Date(Date.UTC(2026, 2, 2, 4, minute))
const why = (q: Partial<Parameters<typeof whyNotTakenOut>[0]>) =>
  whyNotTakenOut({ to: 'lost', begunAt: at(0), firstReadAt: null, causesNotedAt: [], ...q })

describe('a dough is taken out', () => {
  it('as not baked before it is begun, and in no other way then', () => {
    expect(why({ to: 'not_baked', begunAt: null })).toBeNull()
    expect(why({ to: 'lost', begunAt: null })).toBe('not-begun-not-lost')
    expect(why({ to: 'set_aside', begunAt: null })).toBe('not-begun-not-lost')
    expect(why({ to: 'not_baked' })).toBe('begun-so-baked')
  })

  it('as lost or set aside as long as nothing that decides was read', () => {
    expect(why({ to: 'lost' })).toBeNull()
    expect(why({ to: 'set_aside' })).toBeNull()
  })

  it('after that only for a cause that was noted before; at the same moment is not before', () => {
    for (const to of ['lost', 'set_aside'] as const) {
      expect(why({ to, firstReadAt: at(10) })).toBe('read-before-any-cause')
      expect(why({ to, firstReadAt: at(10), causesNotedAt: [at(10), at(11)] })).toBe('read-before-any-cause')
      expect(why({ to, firstReadAt: at(10), causesNotedAt: [at(11), at(9)] })).toBeNull()
    }
  })

  it('and nothing that is noted once it was read helps, however often', () => {
    const minutes = fc.array(fc.integer({ min: 30, max: 59 }).map(at))
    fc.assert(
      fc.property(minutes, fc.constantFrom('lost' as const, 'set_aside' as const), (causesNotedAt, to) => {
        expect(why({ to, firstReadAt: at(30), causesNotedAt })).toBe('read-before-any-cause')
      }),
    )
  })
})
