import 'server-only'
import type { Tx } from '../../db/client'
import type { Json } from '../../documents/canonical-text'
import { proposeLateEntries } from '../amendments/propose-late-entries'
import type { Sender } from './entry-handler'
import type { AsideRow } from './keep-aside'

/** Makes something of entries that were kept aside just now, and says what the record notes of it. */
export type AsideListener = (q: {
  tx: Tx
  actor: Sender
  now: Date
  rows: readonly AsideRow[]
}) => Promise<readonly Json[]>

/** Whoever makes more of what is kept aside than an entry to settle. */
export const asideListeners: readonly AsideListener[] = [proposeLateEntries]
