import { CheckField } from '@/lib/ui/check-field'
import { Field } from '@/lib/ui/field'
import { FieldStack } from '@/lib/ui/field-stack'
import { ruleOf, type FieldRules } from '@/lib/ui/field-rules'
import { FileField } from '@/lib/ui/file-field'
import { Section } from '@/lib/ui/section'
import { TextAreaField } from '@/lib/ui/text-area-field'
import type { Words } from '@/lib/words/words'

type FileSectionProps = {
  problems: Readonly<Record<string, string>>
  /** What was typed here earlier. */
  typed: Readonly<Record<string, string>> | null
  today: string
  rules: FieldRules
  text: Words['importing']
  optionalWord: string
}

/** Step one: which file, and what holds for all of its lines. */
export function FileSection({ problems, typed, today, rules, text, optionalWord }: FileSectionProps) {
  return (
    <Section id="file-step" title={text.file} note={text.fileNote}>
      <FieldStack>
        <FileField
          name="file"
          label={text.choose}
          accept=".csv,.txt,.tsv,text/csv,text/plain"
          hint={text.chooseHint}
          error={problems.file}
        />
        <TextAreaField
          name="text"
          label={text.paste}
          hint={text.pasteHint}
          optionalWord={optionalWord}
          rows={4}
          defaultValue={typed?.text}
          error={problems.text}
        />
        <Field
          name="day"
          type="date"
          label={text.day}
          hint={text.dayHint}
          width="medium"
          defaultValue={typed?.day ?? today}
          error={problems.day}
        />
        <div className="group">
          <CheckField
            name="outside"
            defaultChecked={typed?.outside !== undefined}
            label={text.outside}
            hint={text.outsideHint}
          />
          <div className="mt-4 hidden gap-4 border-l-2 border-rule pl-6 group-has-[#outside:checked]:grid">
            <CheckField
              name="cleanDownDone"
              defaultChecked={typed?.cleanDownDone !== undefined}
              label={text.cleanDown}
              hint={text.cleanDownHint}
              error={problems.cleanDownDone ?? problems['outside.cleanDownDone']}
            />
            <Field
              name="orderWhy"
              defaultValue={typed?.orderWhy}
              type="text"
              label={text.orderWhy}
              hint={text.orderWhyHint}
              optionalWord={optionalWord}
              maxLength={ruleOf(rules, 'outside.orderWhy')?.mostLength}
              autoComplete="off"
              error={problems.orderWhy ?? problems['outside.orderWhy']}
            />
          </div>
        </div>
      </FieldStack>
    </Section>
  )
}
