import { ArmMark } from '@/lib/ui/arm-mark'
import { Cell } from '@/lib/ui/cell'
import { GroupRow } from '@/lib/ui/group-row'
import { SheetTable } from '@/lib/ui/sheet-table'
import { say } from '@/lib/words/say'
import type { Words } from '@/lib/words/words'
import { armLetter } from '@/lib/kitchen/trials/rules'
import type { ArmShown, PlanPart } from './plan-seen'

/**
 * All doughs beside each other: what is weighed for one of each, the same ingredient once a stage. A mass that differs
 * from the control's says from what.
 */
export function DoughsTable({ plan, words, format, language }: PlanPart) {
  const { trials: text } = words
  const [control] = plan.arms
  if (!control) return null
  const width = plan.arms.length + 1
  const linesOf = (arm: ArmShown, stageId: string) => arm.toWeigh.stages.find(({ id }) => id === stageId)?.lines ?? []
  return (
    <SheetTable
      caption={text.plan.doughs}
      captionHidden
      columns={[
        { key: 'ingredient', label: format.massHead(text.plan.ingredient) },
        ...plan.arms.map((arm) => ({
          key: String(arm.position),
          label: arm.position === 0 ? text.control : say(text.dough, language, { letter: armLetter(arm.position) }),
          numeric: true,
        })),
      ]}
    >
      <tr>
        <Cell />
        {plan.arms.map((arm) => (
          <Cell key={arm.position} numeric>
            <ArmMark arm={armLetter(arm.position)} letterHidden />
          </Cell>
        ))}
      </tr>
      {plan.stages.map((stage) => {
        const rows = new Map(
          plan.arms.flatMap((arm) =>
            linesOf(arm, stage.id).map(({ ingredientId, ingredient }) => [ingredientId, ingredient] as const),
          ),
        )
        return [
          plan.stages.length > 1 ? (
            <GroupRow key={stage.id} label={stage.name || text.stages[stage.kind]} columns={width} />
          ) : null,
          ...[...rows].map(([ingredientId, ingredient]) => {
            const ofControl = linesOf(control, stage.id).filter((line) => line.ingredientId === ingredientId)
            return (
              <tr key={`${stage.id}.${ingredientId}`}>
                <Cell head>
                  {ingredient}
                  {ofControl.length === 0 ? (
                    <span className="block text-small font-normal text-ink-2">{text.plan.added}</span>
                  ) : null}
                </Cell>
                {plan.arms.map((arm) => (
                  <Cell key={arm.position} numeric>
                    <Masses
                      lines={linesOf(arm, stage.id).filter((line) => line.ingredientId === ingredientId)}
                      ofControl={ofControl}
                      text={text}
                      format={format}
                      language={language}
                    />
                  </Cell>
                ))}
              </tr>
            )
          }),
        ]
      })}
      <tr>
        <Cell head>{text.plan.total}</Cell>
        {plan.arms.map((arm) => (
          <Cell key={arm.position} numeric>
            <b>{format.weighed(arm.toWeigh.totalG, arm.toWeigh.totalResolutionG)}</b>
          </Cell>
        ))}
      </tr>
    </SheetTable>
  )
}

type Lines = ArmShown['toWeigh']['stages'][number]['lines']

function Masses({
  lines,
  ofControl,
  text,
  format,
  language,
}: { lines: Lines; ofControl: Lines; text: Words['trials'] } & Pick<PlanPart, 'format' | 'language'>) {
  const [was] = ofControl
  return lines.map((line) => {
    const mass = format.weighed(line.weighedG, line.resolutionG)
    const isAsControl = ofControl.some(({ key, weighedG }) => key === line.key && weighedG === line.weighedG)
    const small = [
      ...(line.isPremix ? [text.plan.asPremix] : []),
      ...line.parts.map(({ isDose, massG }) =>
        say(isDose ? text.weighOut.partDose : text.weighOut.partFormula, language, {
          mass: format.weighed(massG, line.resolutionG),
        }),
      ),
      ...(was && !isAsControl && !line.isPremix && line.parts.length === 0
        ? [say(text.plan.was, language, { mass: format.weighed(was.weighedG, was.resolutionG) })]
        : []),
    ]
    return (
      <span key={line.key} className="block">
        {isAsControl ? mass : <b>{mass}</b>}
        {small.map((words) => (
          <span key={words} className="block text-small text-ink-2">
            {words}
          </span>
        ))}
      </span>
    )
  })
}
