import 'server-only'

/** A desk session ends after half an hour without a request … */
export const sessionIdleMs = 30 * 60_000
/** … and after twelve hours at the latest, which is longer than any shift. */
export const sessionLongestMs = 12 * 60 * 60_000
/** Clocks of two processes may differ by this; what lies further ahead was made by a clock that was wrong. */
export const clocksDifferMs = 60_000
/** Nothing was done after this moment, by the machine's own clock and not by the moment that is asked about. */
export const latestMoment = () => new Date(Date.now() + clocksDifferMs)
/** The last request is noted once a minute, so that reading a page seldom writes. */
export const sessionTouchMs = 60_000
/** Single-use links (first run, invitation, new password) live a day. */
export const linkLifeMs = 24 * 60 * 60_000
/** A link that is made on the machine is used there and then. */
export const machineLinkLifeMs = 60 * 60_000
/** What has ended (sessions, links) is kept for this long, for whoever looks into what happened, and then cleared away. */
export const endedKeptMs = 90 * 24 * 60 * 60_000
/** A code that enrols a tablet is typed on it there and then. */
export const stationCodeLifeMs = 15 * 60_000
/** A tablet is given another secret once a month, when somebody logs on … */
export const stationSecretLifeMs = 30 * 24 * 60 * 60_000
/** … and again the next day where it never showed that it has it. */
export const stationSecretAgainMs = 24 * 60 * 60_000
