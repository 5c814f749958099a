import { PageLink } from '@/lib/ui/page-link'
import type { Described as Calculation } from '@/lib/kitchen/calculators/get-reference'
import { say } from '@/lib/words/say'
import type { Sayer } from '../../sayer'
import { FieldsTable } from './fields-table'

/** One calculation of the reference: what it asks for and gives, its source, and its example with the answer. */
export function Described({
  calculation: { id, source, asks, gives, example, answer },
  sayer,
}: {
  calculation: Calculation
  sayer: Sayer
}) {
  const { own, language } = sayer
  const { source: sourceWord, reference: text } = sayer.text
  const label = (what: string) => say(text.ofCalculation, language, { title: own.title, part: what })
  return (
    <article id={id.replace('/', '-')} className="my-8">
      <h2 className="text-control font-semibold">{own.title}</h2>
      <p className="text-small text-ink-2">
        <code translate="no">{id}</code>{' '}
        <PageLink
          href={`/calculators/${id}`}
          aria-label={say(text.openFull, language, { title: own.title })}
          className="ml-3 inline-flex min-h-8 items-center print:hidden"
        >
          {text.open}
        </PageLink>
      </p>
      <p>
        <span className="text-ink-2">{sourceWord}</span> <span translate="no">{source}</span>
      </p>
      <FieldsTable title={text.asks} caption={label(text.asks)} fields={asks} sayer={sayer} />
      <FieldsTable title={text.gives} caption={label(text.gives)} fields={gives} sayer={sayer} />
      <div className="mt-3 grid-cols-2 gap-x-8 wide:grid print:grid">
        <Json title={text.exampleCall} value={example} />
        <Json title={text.exampleAnswer} value={answer} />
      </div>
    </article>
  )
}

function Json({ title, value }: { title: string; value: unknown }) {
  return (
    <div className="min-w-0">
      <h3 className="mt-2 text-small text-ink-2">{title}</h3>
      <pre translate="no" className="whitespace-pre-wrap text-small">
        {jsonText(value)}
      </pre>
    </div>
  )
}

const widest = 88

/** JSON with each field on a line of its own, and what fits on a line not broken further. */
function jsonText(value: unknown, indent = ''): string {
  const short = JSON.stringify(value)
  if (short.length + indent.length <= widest && indent !== '') return short
  const inside = `${indent}  `
  if (Array.isArray(value))
    return block(
      '[',
      value.map((each: unknown) => jsonText(each, inside)),
      ']',
      indent,
    )
  if (typeof value !== 'object' || value === null) return short
  return block(
    '{',
    Object.entries(value).flatMap(([name, each]) =>
      each === undefined ? [] : [`${JSON.stringify(name)}: ${jsonText(each, inside)}`],
    ),
    '}',
    indent,
  )
}

function block(open: string, parts: readonly string[], close: string, indent: string): string {
  return parts.length === 0
    ? `${open}${close}`
    : `${open}\n${parts.map((part) => `${indent}  ${part}`).join(',\n')}\n${indent}${close}`
}
