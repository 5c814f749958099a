import { DefinitionList } from '@/lib/ui/definition-list'
import { AnswerTable } from './answer-table'
import { AnswerText, isPlain } from './answer-text'
import type { Sayer } from './sayer'

type Group = Readonly<Record<string, unknown>>

/** The fields of an answer, or of a question: those of one line as a list, then each table and group under its name. */
export function AnswerView({ group, sayer, level = 3 }: { group: Group; sayer: Sayer; level?: 3 | 4 | 5 }) {
  const entries = Object.entries(group).filter(([, value]) => value !== undefined)
  const lines = entries.filter(([, value]) => isPlain(value))
  const Heading = `h${level}` as const
  return (
    <>
      {lines.length > 0 ? (
        <DefinitionList
          entries={lines.map(([name, value]) => ({
            term: sayer.own.field(name),
            detail: <AnswerText name={name} value={value} sayer={sayer} />,
            strong:
              typeof value === 'number' || (typeof value === 'string' && sayer.own.screenUnit(name) !== undefined),
          }))}
        />
      ) : null}
      {entries
        .filter(([, value]) => !isPlain(value))
        .map(([name, value]) => (
          <div key={name} className="mt-5">
            <Heading className="mb-1 font-semibold">{sayer.own.field(name)}</Heading>
            <Inside name={name} value={value} sayer={sayer} level={level} />
          </div>
        ))}
    </>
  )
}

function Inside({ name, value, sayer, level }: { name: string; value: unknown; sayer: Sayer; level: 3 | 4 | 5 }) {
  if (!Array.isArray(value)) return <AnswerView group={value as Group} sayer={sayer} level={level === 3 ? 4 : 5} />
  const list = value as readonly unknown[]
  if (list.every((each) => typeof each === 'object' && each !== null && !Array.isArray(each)))
    return <AnswerTable name={name} rows={list as readonly Group[]} sayer={sayer} />
  return (
    <ol className="list-decimal pl-6">
      {list.map((each, i) => (
        <li key={i}>
          <AnswerText name={name} value={each} sayer={sayer} />
        </li>
      ))}
    </ol>
  )
}
