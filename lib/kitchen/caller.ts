import 'server-only'
import type { DeskActor } from '../auth/actor'
import type { DeskCredential, JobCredential, StationCredential, TasterCredential } from '../auth/credential'
import type { Language } from '../words/words'

/** From where and how somebody calls, whoever it is. */
type Call = {
  /** Network address, for the record. */
  address: string
  /** Browser, for the list of sessions. */
  device: string
  /** What their browser asks for, where neither they nor the bakery chose a language. */
  browserLanguage?: Language
  /** The clock; the seed runs commands at past times, tests move it. */
  now?: () => Date
}

/** What a person asks for once, however often it is sent. */
type Asks = {
  /** Made with the form that was sent, or with the tap on a tablet, so that sending it again does nothing more. */
  formId?: string | null
}

/** Somebody at the desk, signed in or not, as the route knows them: a secret from a cookie, not yet a person. */
export type DeskCaller = Call &
  Asks &
  DeskCredential & {
    /** The person's password typed with this very request, where a command asks for it. */
    password?: string
    /** Who that is, looked up already: for the queries of one page. A command looks for itself. */
    actor?: DeskActor | null
  }

/** Who calls, with the credential of their kind. */
export type Caller = DeskCaller | (Call & Asks & StationCredential) | (Call & TasterCredential) | (Call & JobCredential)
