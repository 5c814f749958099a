import 'server-only'
import type { getRepairs } from '@/lib/kitchen/repairs/get-repairs'
import type { AnswerOf } from '@/lib/kitchen/query'
import { formatDateTime } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'

type Repair = AnswerOf<typeof getRepairs>['repairs'][number]

/** What was done about a loss, in one sentence, with who and when. */
export function sayRepair(
  { kind, code, otherCode, day, otherDay, why, by: { name: who }, at: done }: Repair,
  bakery: Parameters<typeof formatDateTime>[1],
  text: Words['results']['repairs'],
  language: Language,
): string {
  const at = formatDateTime(done, bakery)
  switch (kind) {
    case 'bake_again':
      return say(text.bake_again, language, { code: code ?? '', other: otherCode ?? '', at, who })
    case 'swap':
      return say(text.swap, language, { code: code ?? '', other: otherCode ?? '', why: why ?? '', at, who })
    case 'add_day':
      return say(text.add_day, language, { day: otherDay ?? '', short: day ?? '', at, who })
    default:
      return kind satisfies never
  }
}
