import 'server-only'
import { spreadOfClosedTrials } from '../results/spread-of-closed-trials'

/** What a plan is told of trials that were closed, by the rooms that know how they are read. */
export const toldByClosedTrials = { ownSpread: spreadOfClosedTrials } as const
