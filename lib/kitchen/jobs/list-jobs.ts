import 'server-only'
import { z } from 'zod'
import { query } from '../query'
import { jobs } from './jobs'

/**
 * What the install does by itself, with when each job was last begun and how that ended, and how the bakery's own record
 * was found the last time. A job that has no end runs now, or was cut off and is begun again.
 */
export const listJobs = query({
  name: 'jobs.list-jobs',
  input: z.strictObject({}),
  right: 'read-record',
  async run({ db, actor: { bakeryId } }) {
    const [runs, check] = await Promise.all([
      db.jobRun.findMany({ select: { name: true, beganAt: true, endedAt: true, outcome: true } }),
      db.recordCheck.findUnique({ where: { bakeryId }, select: { at: true, faultNumber: true, fault: true } }),
    ])
    return {
      jobs: jobs.map(({ name }) => {
        const run = runs.find((each) => each.name === name)
        return {
          name,
          run: run ? { beganAt: run.beganAt, endedAt: run.endedAt, how: run.outcome ?? ('under-way' as const) } : null,
        }
      }),
      lastCheck: check && {
        at: check.at,
        fault:
          check.fault === null
            ? null
            : { number: Number(check.faultNumber), isUnknownFormat: check.fault === 'unknown_format' },
      },
    }
  },
})
