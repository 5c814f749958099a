import { Button } from '@/lib/ui/button'
import { ErrorLine } from '@/lib/ui/error-line'
import { FieldStack } from '@/lib/ui/field-stack'
import { FormSummary } from '@/lib/ui/form-summary'
import type { FieldShape } from '@/lib/kitchen/calculators/shape-of-schema'
import { say } from '@/lib/words/say'
import type { Sayer } from '../../sayer'
import type { PlacedFaults } from './place-faults'
import { QuestionField } from './question-field'
import { QuestionTable } from './question-table'
import type { Typed } from './typed'

type QuestionFormProps = { id: string; fields: readonly FieldShape[]; typed: Typed; faults: PlacedFaults; sayer: Sayer }

/** The question of a calculation. It is sent as an address, so that question and answer can be passed on. */
export function QuestionForm({ id, fields, typed, faults, sayer }: QuestionFormProps) {
  const { text, language } = sayer
  return (
    <form id="question" tabIndex={-1} action={`/calculators/${id}`} method="get" noValidate className="outline-none">
      {/* The first button is the one that the Enter key presses: it must not be one that removes a row. */}
      <button type="submit" tabIndex={-1} aria-hidden="true" className="sr-only" />
      {faults.all.length > 0 ? (
        <FormSummary title={say(text.wrong, language, { count: faults.all.length })} errors={faults.all} />
      ) : null}
      <QuestionFields fields={fields} path="" typed={typed} faults={faults.at} sayer={sayer} />
      <div className="mt-6">
        <Button tone="go">{text.go}</Button>
      </div>
    </form>
  )
}

type QuestionFieldsProps = {
  fields: readonly FieldShape[]
  path: string
  typed: Typed
  faults: ReadonlyMap<string, string>
  sayer: Sayer
}

function QuestionFields({ fields, path, ...shared }: QuestionFieldsProps) {
  return (
    <FieldStack>
      {fields.map((field) => {
        const { name, shape } = field
        const at = `${path}${name}`
        const error = shared.faults.get(at)
        if (shape.kind === 'list' && shape.of.kind === 'group')
          return <QuestionTable key={name} name={name} at={at} fields={shape.of.fields} {...shared} />
        if (shape.kind !== 'group') return <QuestionField key={name} field={field} at={at} {...shared} />
        return (
          <fieldset key={name} id={at} tabIndex={-1} className="min-w-0 border-l-2 border-rule pl-4">
            <legend className="mb-2 font-semibold">{shared.sayer.own.field(name)}</legend>
            <QuestionFields fields={shape.fields} path={`${at}.`} {...shared} />
            {error ? <ErrorLine id={`${at}-error`} text={error} /> : null}
          </fieldset>
        )
      })}
    </FieldStack>
  )
}
