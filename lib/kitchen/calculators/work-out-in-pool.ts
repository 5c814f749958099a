import 'server-only'
import { inPool } from '../heavy/in-pool'
import { Refusal } from '../refusal'
import type { WorkedOut } from './work-out'

/**
 * Has a worker run a calculation on what somebody gave: nobody can say beforehand how long their figures take. Where
 * no answer comes in time, that is what is wrong with the question.
 * @param id of a calculation that is there
 * @throws Error when the calculation breaks: a bug
 */
export async function workOutInPool(id: string, given: unknown): Promise<WorkedOut> {
  try {
    return await inPool('work-out', { id, given })
  } catch (error) {
    if (!(error instanceof Refusal) || (error.code !== 'took-too-long' && error.code !== 'not-worked-out')) throw error
    return { ok: false, faults: [{ path: '', code: error.code, facts: error.facts }] }
  }
}
