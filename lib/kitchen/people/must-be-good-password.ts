import 'server-only'
import { findPasswordFault } from '../../auth/password-rules'
import { Refusal } from '../refusal'

/** Refuses a password that a guesser would try early. @throws Refusal at the field */
export function mustBeGoodPassword(password: string, names: readonly string[], field = 'password'): void {
  const fault = findPasswordFault(password, [...names, 'Evendough'])
  if (fault) throw Refusal.at(field, fault)
}
