import { Cell } from '@/lib/ui/cell'
import { SheetTable } from '@/lib/ui/sheet-table'
import { say } from '@/lib/words/say'
import type { Words } from '@/lib/words/words'
import { ArmCell } from '../../trials/[trialId]/result/arm-cell'
import { WithInterval } from '../../trials/[trialId]/result/numbers-table'
import type { ResultForms } from '../../trials/[trialId]/result/result-forms'
import { verdictText } from '../../trials/[trialId]/result/say-result'
import type { EvidenceSeen } from './decision-seen'

/** The arms against the control as the evidence has them, with good loaves, and costs for whoever sees them. */
export function EvidenceTable({
  evidence,
  forms,
  text,
}: {
  evidence: EvidenceSeen
  forms: ResultForms
  text: Words['decisions']
}) {
  const { text: result, language, unit } = forms
  const { costs, declared } = evidence
  const costOf = (position: number) => {
    const cost = costs?.arms.find(({ arm }) => arm === position)
    return cost?.perLoaf ?? null
  }
  return (
    <SheetTable
      caption={text.evidence}
      captionHidden
      columns={[
        { key: 'arm', label: result.arm },
        { key: 'verdict', label: result.verdict },
        { key: 'doughs', label: result.doughs, numeric: true },
        { key: 'mean', label: say(result.mean, language, { unit }), numeric: true },
        { key: 'difference', label: say(result.difference, language, { unit: forms.axisUnit }), numeric: true },
        { key: 'good', label: text.goodLoaves, numeric: true },
        ...(costs
          ? [{ key: 'cost', label: costs.loaf === 'good' ? result.perGoodLoaf : result.perLoaf, numeric: true }]
          : []),
      ]}
    >
      {evidence.arms.map((arm) => {
        const cost = costOf(arm.arm)
        return (
          <tr key={arm.arm}>
            <ArmCell arm={arm.arm} name={arm.name} forms={forms} narrow />
            <Cell>
              <span className="block min-w-short">{verdictText(arm, evidence, forms)}</span>
            </Cell>
            <Cell numeric>{forms.plain(arm.batches)}</Cell>
            <Cell numeric>{arm.mean === null ? '–' : forms.value(arm.mean)}</Cell>
            <Cell numeric>
              {arm.effect ? <WithInterval {...forms.onAxis(arm.effect)} form={forms.bound} forms={forms} /> : '–'}
            </Cell>
            <Cell numeric>
              {arm.good
                ? say(result.goodOf, language, {
                    pieces: arm.good.pieces,
                    planned: arm.good.batches * declared.piecesPerBatch,
                  })
                : result.notCounted}
            </Cell>
            {costs ? (
              <Cell numeric>
                {cost === null || costs.currency === null ? '–' : forms.loafMoney(cost, costs.currency)}
              </Cell>
            ) : null}
          </tr>
        )
      })}
    </SheetTable>
  )
}
