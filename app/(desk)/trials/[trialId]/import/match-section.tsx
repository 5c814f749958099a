import { CheckField } from '@/lib/ui/check-field'
import { ErrorLine } from '@/lib/ui/error-line'
import { Section } from '@/lib/ui/section'
import { SelectField } from '@/lib/ui/select-field'
import { say } from '@/lib/words/say'
import type { Words } from '@/lib/words/words'
import type { SeenFile } from './import-state'

type MatchSectionProps = {
  seen: SeenFile
  /** It was ticked here earlier. */
  keepOdd: boolean
  problems: Readonly<Record<string, string>>
  uses: readonly { value: string; label: string }[]
  arms: readonly { value: string; label: string }[]
  text: Words['importing']
  language: string
}

const grid = 'grid items-start gap-x-8 gap-y-5 mid:grid-cols-2 wide:grid-cols-3'

/** Step two: what each column says, as it was guessed or chosen, to be changed. */
export function MatchSection({ seen, keepOdd, problems, uses, arms, text, language }: MatchSectionProps) {
  const options = (labels: Record<string, string>) => Object.entries(labels).map(([value, label]) => ({ value, label }))
  return (
    <Section id="match" title={text.match} note={text.matchNote}>
      <input type="hidden" name="matched" value={seen.matched} />
      <div className={grid}>
        <SelectField
          name="separator"
          label={text.separator}
          options={options(text.separators)}
          defaultValue={seen.separator}
          width="full"
        />
        <SelectField
          name="decimal"
          label={text.decimal}
          options={options(text.decimals)}
          defaultValue={seen.decimal}
          width="full"
        />
      </div>
      <div id="columns" tabIndex={-1} className="mt-5 border-t border-rule pt-5">
        {problems.columns ? <ErrorLine id="columns-error" text={problems.columns} /> : null}
        <div className={grid}>
          {seen.columns.map(({ name, example, use }, at) => (
            <SelectField
              // Columns have no name of their own that would tell two of them apart.
              key={at}
              name={`columns.${at}`}
              label={name === '' ? say(text.column, language, { number: at + 1 }) : name}
              hint={example === '' ? undefined : say(text.example, language, { list: example })}
              options={uses}
              defaultValue={use}
              width="full"
              error={problems[`columns.${at}`]}
            />
          ))}
        </div>
      </div>
      {seen.armTexts.length > 0 ? (
        <fieldset className="mt-5 border-t border-rule pt-3">
          <legend className="float-left mb-3 w-full font-bold">{text.armTexts}</legend>
          <div className={`clear-both ${grid}`}>
            {seen.armTexts.map(({ text: written, arm }, i) => (
              <div key={written}>
                <input type="hidden" name={`armTexts.${i}`} value={written} />
                <SelectField
                  name={`arms.${i}`}
                  label={say(text.armText, language, { text: written })}
                  options={arms}
                  emptyLabel={text.armChoose}
                  defaultValue={arm}
                  width="full"
                />
              </div>
            ))}
          </div>
        </fieldset>
      ) : null}
      <div className="mt-5 border-t border-rule pt-3">
        <CheckField name="keepOdd" defaultChecked={keepOdd} label={text.odd} />
      </div>
    </Section>
  )
}
