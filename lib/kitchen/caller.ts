import 'server-only'
import type { Actor } from '../auth/actor'

/** Who calls, as the route knows it: a secret from a cookie, not yet a person. */
export type Caller = {
  sessionSecret: string | null
  /** Network address, for the record. */
  address: string
  /** Browser, for the list of sessions. */
  device: string
  /** The person's password typed with this very request, where a command asks for it. */
  password?: string
  /** Made with the form that was sent, so that sending it again does nothing more. */
  formId?: string | null
  /** Who that is, looked up already: for the queries of one page. A command looks for itself. */
  actor?: Actor | null
  /** The clock; the seed runs commands at past times, tests move it. */
  now?: () => Date
}
