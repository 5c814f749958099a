import { draftFormula } from '../../../lib/kitchen/formulas/draft-formula'
import { draftVersion } from '../../../lib/kitchen/formulas/draft-version'
import { getVersion } from '../../../lib/kitchen/formulas/get-version'
import { callerOf, valueOf } from '../bakery'
import { makeIngredients } from '../ingredients'
import type { ActionWalk, PageWalk, WalkContext } from '../rights-walk'

const units = { locale: 'en-GB', massUnits: 'metric', temperatureUnits: 'celsius' }

const figures = {
  pieces: 4,
  scalingMassG: 880,
  doughLossPct: 1,
  doughTempC: 26,
  mixTimeMin: 11,
  bulkTimeMin: 45,
  proofTimeMin: 55,
  bakeTempC: 225,
  bakeTimeMin: 34,
}
const content = { ...figures, reason: 'What we bake today.', method: '' }

async function lines({ bakery }: WalkContext) {
  const ids = await makeIngredients(bakery.bakeryId, new Date())
  return [
    { ingredientId: ids.breadFlour, pctFlour: 100 },
    { ingredientId: ids.water, pctFlour: 62 },
  ]
}

/** A draft of the second shift baker's, who is no walker, so that each walker is a second person. */
async function plantDraft(context: WalkContext) {
  const { bakery, look } = context
  const owner = callerOf(bakery.owner.sessionSecret, new Date(), bakery.owner.password)
  const stages = [{ kind: 'final_dough', name: '', lines: await lines(context) }]
  const drafted = valueOf(await draftFormula.call(owner, { name: 'Walked tin', ...content, stages }))
  await look.query('UPDATE formula_version SET drafted_by_id = $1 WHERE id = $2', [
    bakery.late.personId,
    drafted.versionId,
  ])
  const { revision, contentHash } = valueOf(await getVersion.call(owner, drafted))
  return { ...drafted, revision, contentHash }
}

/** The editor's form, as the page sends it. */
function typed(
  rows: { ingredientId: string; pctFlour: number }[],
  others: Record<string, string>,
): Record<string, string> {
  const numbers = Object.fromEntries(Object.entries(figures).map(([name, value]) => [name, String(value)]))
  const sent = rows.map(({ ingredientId, pctFlour }, key) => ({
    key,
    ingredientId,
    ingredientName: '',
    pctFlour: String(pctFlour),
  }))
  return {
    method: '',
    ...numbers,
    stages: JSON.stringify([{ key: 100, kind: 'final_dough', name: '', lines: sent }]),
    ...others,
  }
}

const finds = async ({ look }: WalkContext, sql: string, values: unknown[]) =>
  (await look.query(sql, values)).rowCount === 1

export const formulasActions: readonly ActionWalk[] = [
  {
    action: 'app/(desk)/formulas/new/actions.ts#draft',
    command: 'formulas.draft-formula',
    right: 'draft-formula',
    aim: async (context) => ({
      page: '/formulas/new',
      bound: [units],
      fields: typed(await lines(context), { name: 'Walked tin', reason: content.reason }),
      happened: () =>
        finds(context, `SELECT 1 FROM formula WHERE bakery_id = $1 AND name = 'Walked tin'`, [context.bakery.bakeryId]),
    }),
  },
  {
    action: 'app/(desk)/formulas/[formulaId]/versions/[versionId]/actions.ts#draftFrom',
    command: 'formulas.draft-version',
    right: 'draft-formula',
    async aim(context) {
      const { formulaId, versionId } = await plantDraft(context)
      return {
        page: `/formulas/${formulaId}/versions/${versionId}`,
        bound: [versionId],
        fields: { reason: 'Walked.' },
        happened: () =>
          finds(context, `SELECT 1 FROM formula_version WHERE formula_id = $1 AND number = 2`, [formulaId]),
      }
    },
  },
  {
    action: 'app/(desk)/formulas/[formulaId]/versions/[versionId]/actions.ts#discard',
    command: 'formulas.discard-draft',
    right: 'draft-formula',
    async aim(context) {
      const { formulaId, versionId, revision } = await plantDraft(context)
      return {
        page: `/formulas/${formulaId}/versions/${versionId}`,
        bound: [versionId, revision],
        fields: {},
        happened: () =>
          finds(context, `SELECT 1 FROM formula_version WHERE id = $1 AND discarded_at IS NOT NULL`, [versionId]),
      }
    },
  },
  {
    action: 'app/(desk)/formulas/[formulaId]/versions/[versionId]/edit/actions.ts#change',
    command: 'formulas.change-draft',
    right: 'draft-formula',
    async aim(context) {
      const { formulaId, versionId, revision } = await plantDraft(context)
      const { rows } = await context.look.query<{ ingredientId: string; pctFlour: number }>(
        'SELECT ingredient_id AS "ingredientId", pct_flour AS "pctFlour" FROM formula_line WHERE version_id = $1 ORDER BY position',
        [versionId],
      )
      return {
        page: `/formulas/${formulaId}/versions/${versionId}/edit`,
        bound: [{ versionId, seenRevision: revision, units }],
        fields: typed(rows, { reason: 'Walked.' }),
        happened: () =>
          finds(context, `SELECT 1 FROM formula_version WHERE id = $1 AND reason = 'Walked.'`, [versionId]),
      }
    },
  },
  {
    action: 'app/(desk)/formulas/[formulaId]/versions/[versionId]/actions.ts#signOff',
    command: 'formulas.sign-off-version',
    right: 'sign-off-formula',
    async aim(context) {
      const { formulaId, versionId, revision, contentHash } = await plantDraft(context)
      return {
        page: `/formulas/${formulaId}/versions/${versionId}`,
        bound: [{ versionId, seenRevision: revision, seenHash: contentHash, timeZone: 'Europe/Berlin' }],
        fields: { when: 'now', password: '{own}' },
        happened: () => finds(context, 'SELECT 1 FROM signature WHERE version_id = $1', [versionId]),
      }
    },
  },
]

const versionAddress = async (context: WalkContext) => {
  const { formulaId, versionId } = await plantDraft(context)
  return `/formulas/${formulaId}/versions/${versionId}`
}

export const formulasPages: readonly PageWalk[] = [
  { route: '/formulas', queries: ['formulas.list-formulas'], right: 'read-work', address: () => '/formulas' },
  { route: '/formulas/new', queries: ['formulas.get-editor'], right: 'draft-formula', address: () => '/formulas/new' },
  {
    route: '/formulas/[formulaId]',
    queries: ['formulas.get-formula'],
    right: 'read-work',
    address: async (context) => `/formulas/${(await plantDraft(context)).formulaId}`,
    named: true,
  },
  {
    route: '/formulas/[formulaId]/versions/[versionId]',
    queries: ['formulas.get-version'],
    right: 'read-work',
    address: versionAddress,
    named: true,
  },
  {
    route: '/formulas/[formulaId]/versions/[versionId]/edit',
    queries: ['formulas.get-editor'],
    right: 'draft-formula',
    address: async (context) => `${await versionAddress(context)}/edit`,
    named: true,
  },
  {
    route: '/formulas/[formulaId]/compare',
    queries: ['formulas.compare-versions'],
    right: 'read-work',
    async address(context) {
      const { formulaId, versionId } = await plantDraft(context)
      const owner = callerOf(context.bakery.owner.sessionSecret, new Date())
      const second = valueOf(await draftVersion.call(owner, { fromVersionId: versionId, reason: 'Second.' }))
      return `/formulas/${formulaId}/compare?from=${versionId}&to=${second.versionId}`
    },
    named: true,
  },
]
