import 'server-only'
import { v7 as uuid } from 'uuid'
import { command } from '../command'
import { Refusal } from '../refusal'
import { draftVersionInput } from './draft-version.input'
import { lockFormulaOfVersion } from './lock-formula'
import { readVersion } from './read-version'
import { writeStages } from './write-content'

/** Drafts a new version from any version of the same formula: everything of it but the reason. Refuses: not-found. */
export const draftVersion = command({
  name: 'formulas.draft-version',
  input: draftVersionInput,
  right: 'draft-formula',
  async run({ tx, actor, now, input }) {
    const { bakeryId } = actor
    const formulaId = await lockFormulaOfVersion(tx, bakeryId, input.fromVersionId)
    const from = await readVersion(tx, bakeryId, input.fromVersionId)
    if (!from) throw new Refusal('not-found')
    const { _max } = await tx.formulaVersion.aggregate({ where: { bakeryId, formulaId }, _max: { number: true } })
    const number = (_max.number ?? 0) + 1
    const versionId = uuid()
    const { scalingMassG, pieces, doughLossPct, doughTempC, mixTimeS, bulkTimeS, proofTimeS, bakeTempC, bakeTimeS, method } = from
    const process = { scalingMassG, pieces, doughLossPct, doughTempC, mixTimeS, bulkTimeS, proofTimeS, bakeTempC, bakeTimeS, method }
    await tx.formulaVersion.create({
      data: {
        bakeryId,
        id: versionId,
        formulaId,
        number,
        fromVersionId: from.id,
        reason: input.reason,
        ...process,
        draftedById: actor.personId,
        createdAt: now,
        revision: 1,
      },
    })
    const stages = from.stages.map(({ kind, name, lines }) => ({
      kind,
      name,
      lines: lines.map(({ pctFlour, ingredient }) => ({ pctFlour, ingredientId: ingredient.id })),
    }))
    await writeStages(tx, bakeryId, versionId, stages)
    return {
      value: { formulaId, versionId },
      audit: { target: versionId, after: { formula: from.formula.name, version: number, from: from.number }, reason: input.reason },
      changed: ['formulas', `formula:${formulaId}`],
    }
  },
})
