import type { getVersion } from '@/lib/kitchen/formulas/get-version'
import type { Query } from '@/lib/kitchen/query'

type ValueOf<Q> = Q extends Query<infer Value> ? Value : never

/** A version as its page got it. */
export type VersionSeen = ValueOf<typeof getVersion>
