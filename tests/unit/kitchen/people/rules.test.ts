import { describe, expect, it } from 'vitest'
import { mayGiveRole, mayManage } from '@/lib/kitchen/people/rules'

describe('who gives which role', () => {
  it('the owner gives every role, the head baker that of a shift baker, a shift baker none', () => {
    const roles = ['owner', 'head_baker', 'shift_baker'] as const
    expect(roles.map((giver) => roles.map((given) => mayGiveRole(giver, given)))).toEqual([
      [true, true, true],
      [false, false, true],
      [false, false, false],
    ])
  })

  it('nobody manages themselves', () => {
    expect(mayManage({ personId: 'a', role: 'owner' }, { id: 'a', role: 'owner' })).toBe(false)
    expect(mayManage({ personId: 'a', role: 'owner' }, { id: 'b', role: 'owner' })).toBe(true)
    expect(mayManage({ personId: 'a', role: 'head_baker' }, { id: 'b', role: 'head_baker' })).toBe(false)
  })
})
