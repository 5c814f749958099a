import 'server-only'
import { groupBy } from '../../calc/group-by'
import type { Closing } from '../../documents/closing/closing'
import { lineOffTarget, type LineFound } from '../conduct/line-off-target.input'
import { outOfItsArm } from '../conduct/out-of-its-arm'
import { stoodBefore } from '../conduct/stood-before'
import { tellingMeasures } from '../readings/telling-measures'
import { isApart, type TrialLine } from './lines-of-plan'

type Content = Pick<Closing, 'measures' | 'doughs' | 'readings' | 'weighings'>
type Entry = NonNullable<Closing['weighings']>['entries'][number]
type AsWeighed = { how: Entry['how']; massG: number | null }

/** A line of one dough, by the code of that. */
export type LineOfDough = Pick<TrialLine, 'stage' | 'ingredient' | 'part' | 'isDose'> & {
  code: string
  stepG: number
  /** A dose that was weighed beside what the formula has of its ingredient. */
  isApart: boolean
}

/** A line that was not as planned. */
export type LineOff = LineOfDough &
  AsWeighed & {
    id: string
    plannedG: number
    found: Exclude<LineFound, 'on-target'>
    who: string
    at: Date
    /** It came in when what decides had been read of the dough already, so it does not take it out. */
    isLate: boolean
  }

/** A weighing that another took the place of. */
export type CorrectedWeighing = LineOfDough & {
  id: string
  before: AsWeighed
  after: AsWeighed
  who: string
  at: Date
  reason: string
}

export type JudgedWeighings = {
  /** Doughs, by their ids, that are out of their arm by what stood when what decides was first read of them. */
  out: ReadonlySet<string>
  /** And by what stood at the end. */
  outAsLast: ReadonlySet<string>
  /** Codes of measured doughs of which nothing was written, and of which not every line was. */
  unwritten: string[]
  partly: string[]
  off: LineOff[]
  corrections: CorrectedWeighing[]
}

/**
 * What comes of the weighings of a trial: which doughs are not of their arm by rule, which lines were off, what was put
 * right. A dough is judged by what stood before what decides was first read of it: whoever has seen the value could
 * choose what they write. Null of a trial that was closed before weighings were written down.
 */
export function judgeWeighings(content: Content, primaryId: string): JudgedWeighings | null {
  const { measures, doughs, readings, weighings } = content
  if (!weighings) return null
  const telling = tellingMeasures(measures, primaryId)
  const readOf = groupBy(
    readings.filter(({ measure }) => telling.has(measure)),
    ({ dough }) => dough,
  )
  const entriesOf = groupBy(weighings.entries, ({ dough }) => dough)
  const lines = new Map(
    weighings.lines.map((line) => [
      placeOf(line.stage.id, line.ingredient.id, line.part),
      { ...line, isApart: isApart(line, weighings.lines) },
    ]),
  )
  const judged = doughs.map((dough) => {
    const firstReadAt = (readOf.get(dough.id) ?? []).reduce<Date | null>((first, { receivedAt }) => {
      const at = new Date(receivedAt)
      return first === null || at < first ? at : first
    }, null)
    const entries = (entriesOf.get(dough.id) ?? []).flatMap((entry) => {
      const line = lines.get(placeOf(entry.stage, entry.ingredient, entry.part))
      const target = line?.targets.find(({ arm }) => arm === dough.arm)
      if (!line || !target) return []
      const { massG: targetG, stepG, toleranceG } = target
      const { how, massG } = entry
      return [
        {
          ...entry,
          receivedAt: new Date(entry.receivedAt),
          isDose: line.isDose,
          targetG,
          found: lineOffTarget({ how, massG, targetG, toleranceG }),
          ofDough: {
            code: dough.code,
            stage: line.stage,
            ingredient: line.ingredient,
            part: line.part,
            isDose: line.isDose,
            stepG,
            isApart: line.isApart,
          },
        },
      ]
    })
    return { dough, entries, asRead: stoodBefore(entries, firstReadAt), asLast: stoodBefore(entries, null) }
  })
  const measured = judged.filter(({ dough }) => dough.state === 'measured')
  const idsWhere = (isIt: (each: (typeof judged)[number]) => boolean) =>
    new Set(judged.filter(isIt).map(({ dough }) => dough.id))
  return {
    out: idsWhere(({ asRead }) => outOfItsArm(asRead)),
    outAsLast: idsWhere(({ asLast }) => outOfItsArm(asLast)),
    unwritten: measured.filter(({ asLast }) => asLast.length === 0).map(({ dough }) => dough.code),
    partly: measured
      .filter(({ asLast }) => asLast.length > 0 && asLast.length < lines.size)
      .map(({ dough }) => dough.code),
    off: judged.flatMap(({ asRead, asLast }) =>
      [...new Set([...asRead, ...asLast])].flatMap((entry): LineOff[] => {
        const { id, how, massG, targetG, found, by, receivedAt, ofDough } = entry
        return found === 'on-target'
          ? []
          : [
              {
                ...ofDough,
                id,
                how,
                massG,
                plannedG: targetG,
                found,
                who: by.name,
                at: receivedAt,
                isLate: !asRead.includes(entry),
              },
            ]
      }),
    ),
    corrections: judged
      .flatMap(({ entries }) =>
        entries.flatMap((right): CorrectedWeighing[] => {
          const wrong = entries.find(({ id }) => id === right.supersedes)
          if (!wrong) return []
          return [
            {
              ...right.ofDough,
              id: right.id,
              before: { how: wrong.how, massG: wrong.massG },
              after: { how: right.how, massG: right.massG },
              who: right.by.name,
              at: right.receivedAt,
              reason: right.reason ?? '',
            },
          ]
        }),
      )
      .sort((a, b) => a.at.getTime() - b.at.getTime() || (a.id < b.id ? -1 : 1)),
  }
}

function placeOf(stage: string, ingredient: string, part: string): string {
  return `${stage} ${ingredient} ${part}`
}
