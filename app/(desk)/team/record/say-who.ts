import type { listRecord } from '@/lib/kitchen/audit/list-record'
import type { AnswerOf } from '@/lib/kitchen/query'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'

type Said = AnswerOf<typeof listRecord>['entries']['rows'][number]['said']
export type Who = Extract<Said, { outcome: 'read' }>['who']

/** Who did what an entry of the record says. A role or job that has no words (any more) is given as it stands there. */
export function sayWho(who: Who, { audit, desk }: Words, language: Language): string {
  const { callers } = audit
  const roleOf = (role: string) => Object.entries(desk.roles).find(([code]) => code === role)?.[1] ?? role
  switch (who?.kind) {
    case undefined:
      return audit.nobody
    case 'desk':
      return say(callers.desk, language, { name: who.name, role: roleOf(who.role) })
    case 'station':
      return who.person
        ? say(callers.station, language, { name: who.person.name, role: roleOf(who.person.role), station: who.name })
        : say(callers.stationAlone, language, { station: who.name })
    case 'taster':
      return say(callers.taster, language, { code: who.code })
    case 'job':
      return (
        Object.entries(callers.jobs).find(([job]) => job === who.job)?.[1] ??
        say(callers.job, language, { job: who.job })
      )
  }
}
