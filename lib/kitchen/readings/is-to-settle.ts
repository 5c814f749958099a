import 'server-only'
import type { Prisma } from '../../db/generated/client'

/** Entries from outside that wait to be settled; what came after a closing waits as an amendment. */
export const isToSettle = { settled: null, why: { not: 'trial_closed' } } satisfies Prisma.EntryToSettleWhereInput
