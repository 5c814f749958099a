import { isOutState } from '@/lib/kitchen/conduct/is-out-state'
import { logWeighingsInput } from '@/lib/kitchen/weighings/log-weighings.input'
import { ActionForm } from '@/lib/ui/action-form'
import { AfterRefusal } from '@/lib/ui/after-refusal'
import { FloorButton } from '@/lib/ui/floor-button'
import { FloorCheck } from '@/lib/ui/floor-check'
import { FloorDisclosure } from '@/lib/ui/floor-disclosure'
import { FloorField } from '@/lib/ui/floor-field'
import { rulesOf } from '@/lib/ui/rules-of'
import { Section } from '@/lib/ui/section'
import { smallMassUnit } from '@/lib/words/format/mass'
import { say } from '@/lib/words/say'
import { weigh, weighAsPlanned } from './actions'
import type { BatchPart, BatchShown } from './batch-view'
import { lineWords, type LineWords } from './line-words'
import { LotFields } from './lot-fields'
import { WeighedList } from './weighed-list'

type Line = NonNullable<BatchShown['weighed']>[number]

/**
 * What was weighed of one batch: one tap for all that every dough has the same of, a field for each line that differs,
 * and behind a tap whatever was off or is to be corrected. It asks the same for every dough of a trial.
 */
export function Weighed(part: BatchPart) {
  const { batch, bakery, words, language } = part
  const text = words.weighed
  const lines = batch.weighed
  if (!lines || batch.state === 'waiting' || batch.state === 'not_baked') return null
  const named = lineWords(lines, bakery, text, language)
  const open = lines.filter(({ stands }) => stands === null)
  const same = open.filter(({ isSame }) => isSame)
  const differing = open.filter(({ isSame }) => !isSame)
  const others = lines.filter((line) => line.stands?.mayCorrect || same.includes(line))
  return (
    <Section
      id="weighed"
      title={text.title}
      note={say(text.state, language, { have: lines.length - open.length, count: lines.length })}
    >
      {batch.isOpen && !isOutState(batch.state) ? (
        <div className="print:hidden">
          <p className="mb-4 max-w-measure">{text.note}</p>
          {same.length > 0 ? (
            <ActionForm
              key={`same ${same.length}`}
              action={weighAsPlanned.bind(null, batch.id, bakery.massUnits, same.map(placeOf))}
              idPrefix="same-"
            >
              <h3 className="text-lead font-semibold">{text.allSame}</h3>
              <ul className="mb-3 max-w-measure list-disc pl-5">
                {same.map((line) => (
                  <li key={keyOf(line)}>{named.planned(line)}</li>
                ))}
              </ul>
              <div className="mb-4 grid gap-4 mid:grid-cols-2">
                {same.map((line, at) => (
                  <LotFields
                    key={keyOf(line)}
                    at={at}
                    line={named.name(line)}
                    lots={line.lots}
                    text={text}
                    language={language}
                  />
                ))}
              </div>
              <div className="flex flex-wrap items-center gap-4">
                <FloorButton tone="plain">{text.allAsPlanned}</FloorButton>
                <span className="max-w-measure text-ink-2">{text.allAsPlannedNote}</span>
              </div>
            </ActionForm>
          ) : null}
          {differing.length > 0 ? (
            <div className="mt-6">
              <h3 className="text-lead font-semibold">{text.differ}</h3>
              <p className="mb-3 max-w-measure">{text.differNote}</p>
              <LinesForm
                {...part}
                key={`differ ${differing.length}`}
                lines={differing}
                named={named}
                idPrefix="differ-"
              />
            </div>
          ) : null}
          {others.length > 0 ? (
            <div className="mt-4 border-t-2 border-rule">
              <FloorDisclosure title={text.other}>
                <p className="mb-3 max-w-measure">{text.otherNote}</p>
                <LinesForm {...part} key={`others ${open.length}`} lines={others} named={named} idPrefix="others-" />
              </FloorDisclosure>
            </div>
          ) : null}
        </div>
      ) : null}
      <WeighedList lines={lines} named={named} text={text} bakery={bakery} language={language} />
    </Section>
  )
}

/** A field for each line, and what says that nothing of it went in; what is left empty says nothing. */
function LinesForm({
  batch,
  bakery,
  words,
  language,
  lines,
  named,
  idPrefix,
}: BatchPart & { lines: readonly Line[]; named: LineWords; idPrefix: string }) {
  const text = words.weighed
  // A field goes by the place of its line among all of the dough, so that it stays that line's when others leave the form.
  const all = batch.weighed ?? []
  return (
    <ActionForm
      rules={rulesOf(logWeighingsInput)}
      action={weigh.bind(null, batch.id, bakery.massUnits, all.map(placeOf))}
      idPrefix={idPrefix}
    >
      <div className="grid gap-5">
        <div className="grid gap-x-8 gap-y-5 mid:grid-cols-2">
          {lines.map((line) => (
            <div key={keyOf(line)} className="grid content-start gap-2">
              <FloorField
                name={`lines.${all.indexOf(line)}.mass`}
                type="mass"
                label={named.field(line, smallMassUnit(bakery.massUnits))}
                hint={named.target(line) ?? undefined}
              />
              <FloorCheck name={`lines.${all.indexOf(line)}.none`} label={text.none} fullLabel={named.none(line)} />
              <LotFields
                at={all.indexOf(line)}
                line={named.name(line)}
                lots={line.lots}
                unit={smallMassUnit(bakery.massUnits)}
                text={text}
                language={language}
              />
            </div>
          ))}
        </div>
        {lines.some(({ stands }) => stands !== null) ? (
          <FloorField name="reason" type="text" label={text.reason} hint={text.reasonHint} />
        ) : null}
        <AfterRefusal>
          <FloorCheck name="confirmed" label={text.confirmed} hint={text.confirmedHint} />
        </AfterRefusal>
        <div>
          <FloorButton tone="plain">{text.keep}</FloorButton>
        </div>
      </div>
    </ActionForm>
  )
}

function placeOf({ stage, ingredient, part, stands }: Line) {
  return { stageId: stage.id, ingredientId: ingredient.id, part, seenId: stands?.id ?? null }
}

function keyOf({ stage, ingredient, part }: Line): string {
  return `${stage.id} ${ingredient.id} ${part}`
}
