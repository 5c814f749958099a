import 'server-only'
import { v7 as uuid } from 'uuid'
import { command } from '../command'
import { draftFormulaInput } from './draft-formula.input'
import { mustMakeAFormula } from './must-make-a-formula'
import { processColumns } from './process-columns'
import { writeStages } from './write-content'

/**
 * Drafts a new formula with its version 1. Refuses: formula-name-taken, wrong-choice and ingredient-ended at a line,
 * flour-short and flour-over.
 */
export const draftFormula = command({
  name: 'formulas.draft-formula',
  input: draftFormulaInput,
  right: 'draft-formula',
  async run({ tx, actor, now, input }) {
    const { name, reason, stages, ...content } = input
    const { bakeryId } = actor
    await mustMakeAFormula(tx, bakeryId, stages)
    const formulaId = uuid()
    await tx.formula.create({ data: { bakeryId, id: formulaId, name, createdAt: now } })
    const versionId = uuid()
    await tx.formulaVersion.create({
      data: {
        bakeryId,
        id: versionId,
        formulaId,
        number: 1,
        reason,
        ...processColumns(content),
        draftedById: actor.personId,
        createdAt: now,
        revision: 1,
      },
    })
    await writeStages(tx, bakeryId, versionId, stages)
    return {
      value: { formulaId, versionId },
      audit: { target: versionId, after: { formula: name, version: 1 }, reason },
    }
  },
})
