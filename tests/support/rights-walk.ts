import type pg from 'pg'
import type { Right } from '../../lib/auth/rights'
import type { TestBakery } from './bakery'

/** A planted bakery, a neighbour, and how to look at what happened. */
export type WalkContext = { bakery: TestBakery; neighbour: TestBakery; look: pg.Pool }
export type WalkRole = 'owner' | 'head_baker' | 'shift_baker'

export type ActionWalk = {
  /** `file#name` of the server action. */
  action: string
  /** Name of the command that it calls. */
  command: string
  right: Right | 'open'
  /** Roles that have the right, in part or whole, and to whom this very request is refused all the same. */
  narrowedFor?: readonly WalkRole[]
  /** Prepares what the request aims at, in the planted bakery, and gives the request and how to see its effect. */
  aim(context: WalkContext): Promise<{
    page: string
    bound: readonly unknown[]
    fields: Readonly<Record<string, string>>
    happened(): Promise<boolean>
  }>
}

export type PageWalk = {
  /** Address pattern of the build. */
  route: string
  /** Names of the queries behind it. */
  queries: readonly string[]
  right: Right | 'open'
  /** An address in the planted bakery. */
  address(context: WalkContext): Promise<string> | string
  /** True when the address names something of the planted bakery, so that a neighbour finds nothing there. */
  named?: true
}
