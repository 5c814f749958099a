import { describe, expect, it } from 'vitest'
import { findPasswordFault } from '@/lib/auth/password-rules'

const names = ['Osier Lane Bakehouse', 'Marit Oduya', 'marit@osier-lane.example', 'Evendough']

describe('which passwords are refused', () => {
  it.each([
    ['123456789987654321', 'password-common'],
    ['PasswordPassword', 'password-common'],
    ['abababababababab', 'password-monotone'],
    ['               ', 'password-monotone'],
    ['evendough-2026-kitchen', 'password-names'],
    ['oh marit what bread', 'password-names'],
    ['THE BAKEHOUSE KEY 77', 'password-names'],
  ])('%s: %s', (password, fault) => {
    expect(findPasswordFault(password, names)).toBe(fault)
  })

  it.each(['rye sours slowly in june', '🥖 crust cracks at dawn 🥖', 'ünter dem Mehlstaub'])('takes %s', (password) => {
    expect(findPasswordFault(password, names)).toBeUndefined()
  })

  it('does not take short words of a name for a name', () => {
    expect(findPasswordFault('a lane by the mill, wet', ['Oso La Mar'])).toBeUndefined()
  })
})
