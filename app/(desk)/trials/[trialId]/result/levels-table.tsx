import { Cell } from '@/lib/ui/cell'
import { Section } from '@/lib/ui/section'
import { SheetTable } from '@/lib/ui/sheet-table'
import { say } from '@/lib/words/say'
import { ArmCell } from './arm-cell'
import type { ResultForms } from './result-forms'
import type { ShownComparison, ShownResult } from './shown-result'

/** Means by arm and level of a factor within batches, and its tests. */
export function LevelsTable({
  result,
  levels,
  forms,
}: {
  result: ShownResult
  levels: NonNullable<ShownComparison['levels']>
  forms: ResultForms
}) {
  const { text, language } = forms
  const { factor, tests } = levels
  const names = new Map(result.declared.arms.map(({ position, name }) => [position, name]))
  const arms = [...new Set(levels.cells.map(({ arm }) => arm))]
  const facts = (test: NonNullable<typeof tests>['arm']) => ({
    df1: test.df1,
    df2: test.df2,
    f: forms.number(test.f, 2),
    p: forms.pEquals(test.p),
  })
  return (
    <Section
      id="levels"
      title={say(text.levels, language, { factor })}
      note={say(text.mean, language, { unit: forms.unit })}
    >
      <SheetTable
        caption={say(text.levels, language, { factor })}
        captionHidden
        columns={[
          { key: 'arm', label: text.arm },
          ...levels.levels.map((level) => ({ key: `level ${level}`, label: level, numeric: true })),
        ]}
      >
        {arms.map((arm) => (
          <tr key={arm}>
            <ArmCell arm={arm} name={names.get(arm)} forms={forms} />
            {levels.cells
              .filter((cell) => cell.arm === arm)
              .map((cell) => (
                <Cell key={cell.level} numeric>
                  {forms.value(cell.mean)}
                </Cell>
              ))}
          </tr>
        ))}
      </SheetTable>
      {tests ? (
        <ul className="mt-3 max-w-measure text-small text-ink-2">
          <li>{say(text.levelsTests.arm, language, facts(tests.arm))}</li>
          <li>{say(text.levelsTests.level, language, { factor, ...facts(tests.level) })}</li>
          <li>{say(text.levelsTests.armByLevel, language, { factor, ...facts(tests.armByLevel) })}</li>
        </ul>
      ) : null}
    </Section>
  )
}
