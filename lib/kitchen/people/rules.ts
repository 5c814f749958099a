import type { Role } from '../../db/generated/enums'

/** Which role may be given, or invited to, by whom: the head baker stands in for the owner with shift bakers only. */
export function mayGiveRole(giver: Role, given: Role): boolean {
  return giver === 'owner' || (giver === 'head_baker' && given === 'shift_baker')
}

/** Whether somebody may switch a person off, on, or start a new password for them. Nobody does it to themselves. */
export function mayManage(manager: { personId: string; role: Role }, person: { id: string; role: Role }): boolean {
  return manager.personId !== person.id && mayGiveRole(manager.role, person.role)
}
