import { ArmMark } from '@/lib/ui/arm-mark'
import { Cell } from '@/lib/ui/cell'
import { GroupRow } from '@/lib/ui/group-row'
import { SheetTable } from '@/lib/ui/sheet-table'
import { say } from '@/lib/words/say'
import { armLetter } from '@/lib/kitchen/trials/rules'
import type { ArmShown, PlanPart } from './plan-seen'

/** All doughs beside each other: what is weighed for one of each. A mass that differs from the control's says from what. */
export function DoughsTable({ plan, words, format, language }: PlanPart) {
  const { trials: text } = words
  const [control, ...arms] = plan.arms
  if (!control) return null
  const resolutionG = plan.scale?.resolutionG ?? 0.1
  const weighed = (massG: number) => format.weighed(massG, resolutionG)
  const doses = arms.flatMap((arm) => arm.lines.filter((line) => line.dose !== null).map((line) => ({ arm, line })))
  const width = plan.arms.length + 1
  return (
    <SheetTable
        caption={text.plan.doughs}
        captionHidden
        columns={[
          { key: 'ingredient', label: `${text.plan.ingredient}, ${format.massUnit}` },
          ...plan.arms.map((arm) => ({ key: String(arm.position), label: arm.position === 0 ? text.control : say(text.dough, language, { letter: armLetter(arm.position) }), numeric: true })),
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
          const rows = control.lines.flatMap((line, l) => (line.stageId === stage.id ? [{ line, l }] : []))
          const added = doses.filter(({ line }) => line.stageId === stage.id)
          return [
            plan.stages.length > 1 ? <GroupRow key={stage.id} label={stage.name || text.stages[stage.kind]} columns={width} /> : null,
            ...rows.map(({ line, l }) => (
              <tr key={`${stage.id}.${l}`}>
                <Cell head>{line.ingredient}</Cell>
                <Cell numeric>{weighed(line.weighedG)}</Cell>
                {arms.map((arm) => (
                  <Cell key={arm.position} numeric>
                    <MovedMass arm={arm} at={l} controlG={line.weighedG} weighed={weighed} was={(mass) => say(text.plan.was, language, { mass })} />
                  </Cell>
                ))}
              </tr>
            )),
            ...added.map(({ arm, line }) => (
              <tr key={`${arm.position}.${String(line.dose)}`}>
                <Cell head>
                  {line.ingredient}
                  <span className="font-normal text-ink-2">{', '}
                    {text.plan.added}</span>
                </Cell>
                {plan.arms.map((each) => (
                  <Cell key={each.position} numeric>
                    {each.position === arm.position ? <b>{weighed(line.weighedG)}</b> : null}
                  </Cell>
                ))}
              </tr>
            )),
          ]
        })}
        <tr>
          <Cell head>{text.plan.total}</Cell>
          {plan.arms.map((arm) => (
            <Cell key={arm.position} numeric>
              <b>{weighed(arm.doughWeighedG)}</b>
            </Cell>
          ))}
        </tr>
    </SheetTable>
  )
}

function MovedMass({ arm, at, controlG, weighed, was }: { arm: ArmShown; at: number; controlG: number; weighed: (massG: number) => string; was: (mass: string) => string }) {
  const massG = arm.lines[at]?.weighedG ?? 0
  if (massG === controlG) return weighed(massG)
  return (
    <>
      <b>{weighed(massG)}</b>
      <span className="block text-small text-ink-2">{was(weighed(controlG))}</span>
    </>
  )
}
